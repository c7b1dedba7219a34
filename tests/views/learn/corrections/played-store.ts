import type { InventedStore } from '../../../../scripts/learn/invented-store.ts';
import type { TimedLot } from '../../../../src/domain/learn/corrections/win-outcomes.ts';
import type { LotId } from '../../../../src/domain/lot/lot.ts';
import { cents } from '../../../../src/domain/money/cents.ts';
import { bidActionSchema } from '../../../../src/domain/sale/bid-action.ts';
import { instant } from '../../../../src/domain/time/instant.ts';
import { DAY, HOUR } from '../../../../src/domain/time/units.ts';
import { dateIn } from '../../../../src/domain/time/wall-clock.ts';
import type { Store } from '../../../../src/store/store.ts';
import { value } from '../../../store/open-test-store.ts';

/** Something that is written down at one moment. */
interface Act {
  readonly at: number;
  readonly do: () => Promise<unknown>;
}

/**
 * Lives an invented store through in a real one, act by act in the order of time: lots are added the day before their
 * sale, their ends noted, bills and sales booked, each at its own moment.
 * @returns the ids that its lots have there
 */
export async function playInto(
  store: Store,
  clock: { set(to: number): void },
  { lots, setup, now }: InventedStore,
): Promise<ReadonlyMap<LotId, LotId>> {
  const ids = new Map<LotId, LotId>();
  const idOf = (lot: LotId): LotId => ids.get(lot) ?? lot;
  const first = Math.min(now, ...lots.map(({ past }) => past.forecast.at));
  clock.set(first - 2 * DAY);
  value(await store.saveSetup(setup));
  const acts = lots.flatMap((lot) => actsOf(store, lot, ids, idOf, setup.store.zone));
  for (const act of acts.sort((a, b) => a.at - b.at)) {
    clock.set(act.at);
    await act.do();
  }
  return ids;
}

function actsOf(
  store: Store,
  { past, known }: TimedLot,
  ids: Map<LotId, LotId>,
  idOf: (lot: LotId) => LotId,
  zone: Parameters<typeof dateIn>[0],
): Act[] {
  const { forecast, happened } = past;
  const { bought, hammer, ended } = happened;
  const add: Act = {
    at: forecast.at - DAY,
    async do() {
      const added = value(
        await store.addLots('typed', [{ facts: { ...forecast.facts, make: 'Larkspur', model: 'Hauler' } }]),
      );
      const id = added.lots[0];
      if (id !== undefined) ids.set(past.lot, id);
    },
  };
  const end: Act = {
    at: known.ended,
    async do() {
      const price = hammer ?? cents(0);
      if (happened.bid !== null) {
        const bid = { action: 'proxy-placed', cents: happened.bid, at: instant(happened.at - HOUR) };
        value(await store.noteBid(idOf(past.lot), bidActionSchema.parse(bid)));
      }
      value(
        await store.noteResult(idOf(past.lot), {
          result: ended === 'won' ? { ended, hammerCents: price } : { ended: 'lost', hammerCents: price },
          at: happened.at,
        }),
      );
    },
  };
  const later: Act[] = [];
  const { billed, sold } = known;
  if (bought !== null && billed !== undefined)
    later.push({
      at: billed,
      do: async () =>
        value(
          await store.book({
            kind: 'costs-booked',
            date: dateIn(zone, billed),
            paid: 'owed',
            lines: bought.lines.flatMap(({ cost, label, actualCents, key }) =>
              actualCents === null || actualCents === 0
                ? []
                : [{ lot: idOf(past.lot), cost, label, cents: actualCents, against: key }],
            ),
          }),
        ),
    });
  const sale = bought?.sale;
  if (sale && sold !== undefined)
    later.push({
      at: sold,
      do: async () =>
        value(
          await store.book({
            kind: 'outcome-booked',
            lot: idOf(past.lot),
            date: sale.date,
            priceCents: sale.cents,
            buyer: sale.buyer,
          }),
        ),
    });
  return [add, end, ...later];
}
