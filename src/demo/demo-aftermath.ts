import type { LotFacts, LotId } from '../domain/lot/lot.ts';
import { cents } from '../domain/money/cents.ts';
import { type Instant, instant } from '../domain/time/instant.ts';
import { MINUTE, MINUTES_A_DAY } from '../domain/time/units.ts';
import type { Happening } from '../journal/happening.ts';
import type { NewLot } from '../journal/happenings/watching.ts';
import type { EntryId } from '../journal/ids.ts';
import { DEMO_CARS } from './demo-cars.ts';
import { closeInMinutes, type DemoVenue } from './demo-closes.ts';
import { demoVin } from './demo-vin.ts';

/** A sale of the weeks before, and all that was noted of it. */
export interface AftermathSale {
  readonly lot: NewLot;
  /** How it ended, and the steps since. */
  readonly noted: readonly Happening[];
  /** A dispute about it: what opens it, and what follows, with `TO_COME` in place of the entry that opened it. */
  readonly dispute?: {
    readonly opened: Happening;
    readonly followed: readonly Happening[];
  };
  /** The car as it is offered again. */
  readonly again?: NewLot;
}

/** Stands for the entry that opens a dispute until it is written. */
const TO_COME = '0'.repeat(26) as EntryId;

/** What follows, once the entry that opened the dispute is there. */
export const naming = (happening: Happening, dispute: EntryId): Happening =>
  'dispute' in happening ? { ...happening, dispute } : happening;

const dollars = (amount: number) => cents(amount * 100);

/**
 * Six invented sales: one final, one to be paid, one disputed, one disputed and sold again, one that the venue wants undone,
 * one whose bid did not go in.
 */
export function demoAftermath(now: Instant, venueNames: Record<DemoVenue, string>, ids: () => LotId): AftermathSale[] {
  const ago = (days: number) => instant(Math.floor(now / MINUTE) * MINUTE - Math.round(days * MINUTES_A_DAY) * MINUTE);
  const ahead = (days: number) => ago(-days);
  const lot = (car: number, venue: DemoVenue, days: number): NewLot => {
    const facts = factsOf(car, venue, venueNames[venue]);
    return {
      id: ids(),
      facts: { ...facts, close: closeInMinutes(venue, -Math.round(days * MINUTES_A_DAY), now) },
      evidence: {},
    };
  };
  const again: NewLot = lot(15, 'saltmarsh', -2.6);
  const won = (hammer: number, days: number): Happening => ({
    kind: 'result-noted',
    result: { ended: 'won', hammerCents: dollars(hammer) },
    at: ago(days),
    by: 'proxy',
    maxBidCents: dollars(hammer + 350),
  });
  const step = (
    name: 'pay' | 'transport' | 'deliver' | 'inspect' | 'title' | 'fund' | 'refund',
    days: number,
    amount?: number,
  ) =>
    ({
      kind: 'step-noted',
      step: name,
      done: true,
      at: ago(days),
      ...(amount !== undefined && { cents: dollars(amount) }),
    }) satisfies Happening;
  const placed = (amount: number, days: number): Happening => ({
    kind: 'bid-noted',
    bid: { action: 'proxy-placed', cents: dollars(amount), at: ago(days) },
  });
  return [
    {
      lot: lot(13, 'fogline', 52),
      noted: [
        placed(24_600, 53),
        won(24_200, 52),
        ...(['pay', 'fund', 'transport', 'deliver', 'inspect'] as const).map((name, i) => step(name, 50 - i)),
        step('title', 31),
      ],
    },
    { lot: lot(9, 'caliche', 1.2), noted: [placed(21_300, 2), won(20_950, 1.2), step('transport', 0.4)] },
    {
      lot: lot(6, 'saguaro', 6),
      noted: [
        placed(22_400, 6.5),
        won(21_800, 6),
        step('pay', 5),
        step('transport', 4.5),
        step('deliver', 3),
        step('inspect', 2),
      ],
      dispute: {
        opened: {
          kind: 'dispute-opened',
          opened: {
            side: 'ours',
            reason: 'hidden-defect',
            words:
              'The lift gate drops under load and leaks at the left ram. The condition report says “gate operates”. A shop here wants $2,150 to rebuild it.',
            askedCents: dollars(2150),
            at: ago(2),
            needs: [
              'Pictures of the defect',
              'A shop’s written estimate',
              'Condition report from the listing',
              'Bill of sale',
            ],
          },
        },
        followed: [
          {
            kind: 'dispute-stepped',
            dispute: TO_COME,
            step: { what: 'got', need: 'Pictures of the defect', at: ago(1.9) },
          },
          {
            kind: 'dispute-stepped',
            dispute: TO_COME,
            step: { what: 'got', need: 'Condition report from the listing', at: ago(1.8) },
          },
          {
            kind: 'dispute-stepped',
            dispute: TO_COME,
            step: {
              what: 'talk',
              at: ago(1.1),
              who: 'the venue’s claims desk',
              words: 'They want the estimate in writing before they look at it.',
            },
          },
        ],
      },
    },
    {
      lot: lot(15, 'saltmarsh', 13),
      noted: [
        placed(17_900, 14),
        won(17_600, 13),
        step('pay', 11),
        step('transport', 10),
        step('deliver', 7),
        step('inspect', 6.8),
      ],
      dispute: {
        opened: {
          kind: 'dispute-opened',
          opened: {
            side: 'ours',
            reason: 'wrong-description',
            words: 'Listed with the ladder rack and a 6-speed automatic. It has neither: a bare roof and a manual.',
            askedCents: dollars(3000),
            at: ago(6.5),
            needs: ['Picture of the listing', 'Pictures of the actual car'],
          },
        },
        followed: [
          { kind: 'dispute-stepped', dispute: TO_COME, step: { what: 'told', at: ago(6.4), who: 'the venue' } },
          {
            kind: 'dispute-stepped',
            dispute: TO_COME,
            step: { what: 'got', need: 'Picture of the listing', at: ago(6.4) },
          },
          {
            kind: 'dispute-stepped',
            dispute: TO_COME,
            step: { what: 'got', need: 'Pictures of the actual car', at: ago(6.2) },
          },
          {
            kind: 'dispute-stepped',
            dispute: TO_COME,
            step: { what: 'offer', cents: dollars(600), at: ago(4), who: 'the seller' },
          },
          {
            kind: 'dispute-closed',
            dispute: TO_COME,
            outcome: {
              ended: 'sold-again',
              at: ago(3),
              cents: dollars(180),
              words:
                'No ladder rack, and a manual gearbox. Bid on it as such, or don’t. The venue accepted the return, runs the van again, and paid to have it hauled to its yard.',
              newLot: again.id,
            },
          },
          step('refund', 1, 10_000),
        ],
      },
      again,
    },
    {
      lot: lot(11, 'saltmarsh', 4),
      noted: [placed(15_600, 5), won(15_250, 4), step('pay', 2.5), step('transport', 2)],
      dispute: {
        opened: {
          kind: 'dispute-opened',
          opened: {
            side: 'theirs',
            reason: 'sale-undone',
            words:
              'The venue wants to cancel the sale. Its seller says that the van was sold on his own lot an hour before the hammer. We have paid, and the carrier is on his way.',
            at: ago(0.8),
            needs: ['The venue’s notice', 'Bill of sale', 'Proof of payment'],
          },
        },
        followed: [
          {
            kind: 'dispute-stepped',
            dispute: TO_COME,
            step: { what: 'got', need: 'The venue’s notice', at: ago(0.8) },
          },
          {
            kind: 'dispute-stepped',
            dispute: TO_COME,
            step: { what: 'offer', cents: dollars(250), at: ago(0.6), who: 'the venue’s manager' },
          },
        ],
      },
    },
    {
      lot: lot(2, 'saguaro', 0.6),
      noted: [
        placed(26_500, 1),
        { kind: 'result-noted', result: { ended: 'lost', hammerCents: dollars(24_900) }, at: ago(0.6) },
      ],
      dispute: {
        opened: {
          kind: 'dispute-opened',
          opened: {
            side: 'ours',
            reason: 'bid-not-taken',
            words: 'Our proxy of $26,500 was confirmed, and it sold for $24,900 to someone else.',
            at: ago(0.5),
            next: { what: 'Call the venue for its bid record', at: ahead(0.9) },
            needs: ['Receipt of the bid', 'Picture of the page', 'The venue’s bid record'],
          },
        },
        followed: [
          {
            kind: 'dispute-stepped',
            dispute: TO_COME,
            step: { what: 'got', need: 'Receipt of the bid', at: ago(0.5) },
          },
        ],
      },
    },
  ];
}

function factsOf(car: number, venue: DemoVenue, venueName: string): LotFacts {
  const kind = DEMO_CARS[car % DEMO_CARS.length];
  if (kind === undefined) throw new RangeError('the demo has no cars');
  const { maker, year, make, model, trim, miles, retail } = kind;
  return {
    vin: demoVin(maker, year, car * 53 + 7001, false),
    year,
    make,
    model,
    ...(trim === '' ? {} : { trim }),
    miles: miles + car * 210,
    lotNumber: String(900 + car),
    venueId: venue,
    venueName,
    retail: { likely: dollars(retail) },
    titleId: 'clean',
  };
}
