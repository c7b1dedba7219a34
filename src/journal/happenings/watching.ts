import * as z from 'zod/mini';
import type { Bidding } from '../../domain/bid/bidding.ts';
import { type Evidence, evidenceByFieldSchema } from '../../domain/lot/evidence.ts';
import { type LotFacts, type LotField, lotFactsSchema, lotIdSchema, lotSourceSchema } from '../../domain/lot/lot.ts';
import { stillUnread } from '../../domain/lot/unread-cell.ts';
import { proxyAction } from '../../domain/sale/proxy-action.ts';
import { type Instant, instantSchema } from '../../domain/time/instant.ts';
import { biddingOf, withBid, withPrice } from '../states/lot-bidding.ts';
import type { LotState } from '../states/lot-state.ts';
import type { Noted } from '../states/noted.ts';
import { aboutLot, arrival } from './row.ts';

const newLotSchema = z.strictObject({
  id: lotIdSchema,
  facts: lotFactsSchema,
  evidence: evidenceByFieldSchema,
});
export type NewLot = z.infer<typeof newLotSchema>;

/** Lots are added, change, and are removed. */
export const WATCHING = [
  /** One or many lots came in at once; an import of 50,000 is a few hundred of these. */
  arrival(
    'lots-added',
    { source: lotSourceSchema, lots: z.array(newLotSchema).check(z.minLength(1)) },
    {
      fold: ({ lots, source }, { entry, notedAt }) =>
        lots.map(({ id, facts, evidence }) => ({
          id,
          facts,
          evidence,
          source,
          addedAt: notedAt,
          changedAt: notedAt,
          dropped: false,
          bornIn: entry,
        })),
      // With all that came with it, so not from the history of one of them.
      undo: 'where made',
      pack: 'sale',
    },
  ),
  /** Fields of a lot were set or emptied. */
  aboutLot(
    'lot-changed',
    {
      set: lotFactsSchema,
      clear: z._default(z.array(z.keyof(lotFactsSchema)), []),
      evidence: evidenceByFieldSchema,
      /** When the price now was seen, where that was not when it was written down. */
      seenAt: z.optional(instantSchema),
      /** A person looked at what a page says and took it, though it contradicts what was known. */
      confirmed: z.optional(z.literal(true)),
    },
    {
      fold: changed,
      undo: 'in history',
      pack: 'sale',
    },
  ),
  /** The buyer stopped watching a lot; it stays in the journal. */
  aboutLot('lot-dropped', {}, { fold: () => ({ dropped: true }), undo: 'where made', pack: 'sale' }),
] as const;

interface Change {
  readonly set: LotFacts;
  readonly clear: readonly LotField[];
  readonly evidence: LotState['evidence'];
  readonly seenAt?: Instant | undefined;
  readonly confirmed?: true | undefined;
}

/** A price that was set was seen; a proxy that was set, cut or emptied is an act on a bid of ours. */
function changed(lot: LotState, change: Change, { notedAt, author }: Noted): LotState {
  const known = biddingOf(lot);
  const facts = changedFacts(lot.facts, change);
  const after = { ...lot, facts, evidence: evidenceAfter(lot.evidence, change) };
  const priced = change.set.priceNow !== undefined || change.clear.includes('priceNow');
  const seen = priced ? withPrice(known, after, change.seenAt ?? notBefore(known, notedAt), change.confirmed) : after;
  const action = proxyAction(lot.facts.proxy, facts.proxy);
  if (action === null) return seen;
  const bid = { action, at: notedAt, by: author, closeThen: lot.facts.close?.instant };
  const { proxy } = facts;
  return withBid(seen.bidding ?? known, seen, proxy === undefined ? bid : { ...bid, cents: proxy });
}

/** A clock that was put back does not make a price older than the last. */
function notBefore({ prices }: Bidding, at: Instant): Instant {
  const last = prices.at(-1)?.seenAt ?? at;
  return last > at ? last : at;
}

/** A fact that was set or emptied is settled, whatever could not be read of it before. */
function changedFacts(before: LotFacts, { set, clear }: Change): LotFacts {
  const facts = { ...without(before, clear), ...set };
  if (facts.unread === undefined || set.unread !== undefined) return facts;
  const unread = stillUnread(facts.unread, new Set([...clear, ...Object.keys(set)]));
  return { ...without(facts, ['unread']), ...(unread && { unread }) };
}

function without(facts: LotFacts, fields: readonly LotField[]): LotFacts {
  const left = { ...facts };
  for (const field of fields) delete left[field];
  return left;
}

/** A new value without evidence of its own must not keep the evidence of the value before it. */
function evidenceAfter(before: LotState['evidence'], change: Change): LotState['evidence'] {
  const touched = new Set<string>([...change.clear, ...Object.keys(change.set)]);
  const kept: [string, Evidence][] = Object.entries(before).filter(([field]) => !touched.has(field));
  return { ...Object.fromEntries(kept), ...change.evidence };
}
