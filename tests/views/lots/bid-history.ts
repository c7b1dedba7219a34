import type { Dispute } from '../../../src/domain/dispute/dispute.ts';
import { type Cents, cents } from '../../../src/domain/money/cents.ts';
import type { BidAction } from '../../../src/domain/sale/bid-action.ts';
import type { Result } from '../../../src/domain/sale/result.ts';
import type { DisputeReason } from '../../../src/domain/setup/after-sale-rules.ts';
import type { CloseTime } from '../../../src/domain/time/close-time.ts';
import { type Instant, instant } from '../../../src/domain/time/instant.ts';
import { zone } from '../../../src/domain/time/zone.ts';
import { foldLots } from '../../../src/folds/fold-lots.ts';
import type { LotState } from '../../../src/folds/lot-state.ts';
import type { Entry, Subject } from '../../../src/journal/entry.ts';
import type { Happening } from '../../../src/journal/happening.ts';
import type { EntryId } from '../../../src/journal/ids.ts';
import { makeEntry, type WritingHead } from '../../../src/journal/make-entry.ts';
import { newDeviceId, nextLotId } from '../../../src/journal/sortable-id.ts';
import { LOTS, subjectOfLot } from '../../../src/journal/subject.ts';
import type { Standing } from '../../../src/views/lots/standing.ts';

export const BOISE = zone('America/Boise');

/** One thing that happened to a lot, as the fixtures write it: whole dollars, ISO times. */
export interface BidEvent {
  readonly at: string;
  readonly kind: string;
  readonly amount?: number | null;
  readonly by?: string;
  readonly why?: string;
  readonly from?: 'page' | 'typed';
  readonly seenAt?: string;
  readonly close?: string | null;
  readonly otherClose?: string;
  readonly doubtful?: boolean;
  readonly increment?: number;
  readonly sale?: 'open' | 'sealed';
  readonly outcome?: string;
  readonly early?: boolean;
  readonly corrects?: boolean;
  readonly says?: string;
}

export const dollars = (amount: number): Cents => cents(Math.round(amount * 100));
const moment = (iso: string): Instant => instant(Date.parse(iso));
const MORE_TIME = 3 * 3_600_000;

/** A lot's history as a journal of several people, each with a browser of his own. */
export class BidHistory {
  readonly entries: Entry[] = [];
  /** What the max bid is after all events so far: null when no price works, undefined when it can't be worked out. */
  maxBid: Cents | null | undefined;
  #heads = new Map<string, WritingHead>();
  #lastId: EntryId | null = null;
  #lot = nextLotId(instant(0), null, new Uint8Array(8));

  /** Plays events by their times; those of one moment in the order in which they stand. */
  constructor(events: readonly BidEvent[]) {
    for (const event of events.toSorted((a, b) => moment(a.at) - moment(b.at))) this.#play(event);
  }

  get lot(): LotState {
    const lot = foldLots(this.entries).get(this.#lot);
    if (lot === undefined) throw new Error('the history brings no lot in');
    return lot;
  }

  /** Its worksheet as the list knows it: the two figures, or that something is missing for them. */
  standingOf = ({ facts: { priceNow } }: LotState): Standing => {
    const maxBid = this.maxBid ?? null;
    return {
      maxBid,
      headroom: maxBid === null || priceNow === undefined ? null : cents(maxBid - priceNow),
      missing: this.maxBid === undefined ? ['Say what it retails for'] : [],
    };
  };

  write(happening: Happening, at: Instant, author = 'buyer', subject: Subject = subjectOfLot(this.#lot)): Entry {
    const fresh = { device: newDeviceId(new Uint8Array(10).fill(author.length)), sequence: 0, hash: '' as const };
    const head = { ...(this.#heads.get(author) ?? fresh), lastId: this.#lastId };
    const made = makeEntry(head, { subject, happening }, { at, author, random: new Uint8Array(8) });
    this.#heads.set(author, made.head);
    this.#lastId = made.head.lastId;
    this.entries.push(made.entry);
    return made.entry;
  }

  #play(event: BidEvent): void {
    const at = moment(event.at);
    const { kind, amount, by = 'buyer', why } = event;
    switch (kind) {
      case 'lot-added':
        this.#lot = nextLotId(at, this.#lot, new Uint8Array(8));
        this.write({ kind: 'lots-added', source: 'typed', lots: [this.#born(event)] }, at, by, LOTS);
        return;
      case 'max-bid':
        this.maxBid = typeof amount === 'number' ? dollars(amount) : why === 'barred title' ? null : undefined;
        return;
      case 'price-now':
        this.#price(event, at);
        return;
      case 'close-moved':
        this.#moveClose(moment(event.close ?? ''), at, by);
        return;
      case 'result':
        this.#end(event, at);
        return;
      case 'bid-confirmed': {
        const says = event.says === 'high bidder' ? 'high-bidder' : 'accepted';
        this.#bid({ action: 'confirmation-seen', says }, event, at);
        return;
      }
      default:
        this.#bid({ action: kind as BidAction['action'] }, event, at);
    }
  }

  #born({ close, otherClose, doubtful, sale, increment = 1 }: BidEvent) {
    const facts = {
      make: 'Alder',
      increment: dollars(increment),
      ...(typeof close === 'string' && { close: closeAt(moment(close), doubtful ? otherClose : undefined) }),
      ...(sale === 'sealed' && { sealed: {} }),
    };
    return { id: this.#lot, facts, evidence: {} };
  }

  #price({ amount, from, seenAt, by }: BidEvent, at: Instant): void {
    // A page that shows no price says nothing.
    if (typeof amount !== 'number') return;
    const evidence = { from: from === 'page' ? 'page-text' : 'typed', text: '', sure: 'certain' } as const;
    const seen = seenAt === undefined ? {} : { seenAt: moment(seenAt) };
    this.write(
      { kind: 'lot-changed', set: { priceNow: dollars(amount) }, clear: [], evidence: { priceNow: evidence }, ...seen },
      at,
      by,
    );
  }

  #moveClose(to: Instant, at: Instant, by: string): void {
    const from = this.lot.facts.close?.instant ?? to;
    const added = to - from;
    const extended = added > 0 && added < MORE_TIME;
    this.write(
      extended
        ? { kind: 'close-extended', from, minutes: added / 60_000 }
        : { kind: 'lot-changed', set: { close: closeAt(to) }, clear: [], evidence: {} },
      at,
      by,
    );
  }

  #bid(action: Pick<BidAction, 'action' | 'says'>, { amount, by, why }: BidEvent, at: Instant): void {
    const money = typeof amount === 'number' ? { cents: dollars(amount) } : {};
    const max = this.maxBid === undefined ? {} : { maxBidCents: this.maxBid };
    this.write(
      { kind: 'bid-noted', bid: { ...action, ...money, at, ...(why !== undefined && { why }), ...max } },
      at,
      by,
    );
  }

  #end({ outcome = '', amount, by, early, corrects }: BidEvent, at: Instant): void {
    if (outcome === 'canceled') {
      const reason: DisputeReason = 'sale-undone';
      const opened: Dispute = { side: 'ours', reason, words: 'The venue canceled the sale.', at, needs: [] };
      const { id } = this.write({ kind: 'dispute-opened', opened }, at, by);
      this.write({ kind: 'dispute-closed', dispute: id, outcome: { ended: 'sale-undone', at } }, at, by);
      return;
    }
    const before = this.lot.sale?.result;
    this.write(
      {
        kind: 'result-noted',
        result: resultOf(outcome, amount),
        at,
        ...(early === true && { early }),
        ...(corrects === true && before !== undefined && { corrects: before.entry }),
      },
      at,
      by,
    );
  }
}

export function resultOf(outcome: string, amount: number | null | undefined): Result {
  const hammerCents = typeof amount === 'number' ? dollars(amount) : undefined;
  switch (outcome) {
    case 'won':
      return { ended: 'won', hammerCents: hammerCents ?? dollars(1) };
    case 'lost':
      return { ended: 'lost', ...(hammerCents !== undefined && { hammerCents }) };
    case 'no-sale':
      return { ended: 'not-sold' };
    case 'withdrawn':
      return { ended: 'withdrawn' };
    default:
      return { ended: 'not-watched' };
  }
}

export function closeAt(at: Instant, other?: string): CloseTime {
  return {
    instant: at,
    text: 'as the sale says it',
    zone: BOISE,
    how: 'stated-offset',
    doubts: other === undefined ? [] : ['overlap'],
    otherwise: other === undefined ? [] : [moment(other)],
  };
}
