import * as z from 'zod/mini';
import { inTime } from '../../domain/bid/bidding.ts';
import { positiveCentsSchema } from '../../domain/money/cents.ts';
import { acceptedRiskSchema } from '../../domain/sale/accepted-risk.ts';
import { bidActionSchema } from '../../domain/sale/bid-action.ts';
import { resultSchema } from '../../domain/sale/result.ts';
import { instantSchema } from '../../domain/time/instant.ts';
import { canonicalJson } from '../canonical-json.ts';
import { entryIdSchema } from '../ids.ts';
import { biddingOf, withBid } from '../states/lot-bidding.ts';
import { NO_SALE, type NotedResult, type SaleState } from '../states/sale-state.ts';
import { aboutLot } from './row.ts';

/** What happens at the sale, each about one lot. */
export const SALE = [
  /** A receipt: somebody did or saw something. */
  aboutLot(
    'bid-noted',
    { bid: bidActionSchema },
    {
      fold(lot, { bid }, { entry, author }) {
        const { sale = NO_SALE, facts } = lot;
        const { page: _, picture: __, ...act } = bid;
        const own = { ...act, by: act.by ?? author, closeThen: facts.close?.instant };
        return { ...withBid(biddingOf(lot), lot, own), sale: { ...sale, bids: [...sale.bids, { ...bid, entry }] } };
      },
      doneAt: ({ bid }) => bid.at,
      files: ({ bid: { picture } }) => (picture === undefined ? [] : [{ hash: picture, name: null }]),
      undo: 'in history',
      pack: 'sale',
    },
  ),
  /** How the lot ended. A later one corrects it. */
  aboutLot(
    'result-noted',
    {
      result: resultSchema,
      /** When it ended, as far as known: the close, unless the user says otherwise. */
      at: instantSchema,
      /** Who bid, and how. */
      bidder: z.optional(z.string().check(z.minLength(1), z.maxLength(80))),
      by: z.optional(z.enum(['proxy', 'live'])),
      /** What our max bid was at that moment; null when there was none. */
      maxBidCents: z.optional(z.nullable(positiveCentsSchema)),
      /** What the plan bid on it as it closed; null where the plan left it out, absent where there was no plan for it. */
      plannedCents: z.optional(z.nullable(positiveCentsSchema)),
      /** It ended before its close, by the word of him who noted it. */
      early: z.optional(z.literal(true)),
      /** Whether our bid was in, where the price says that it may not have been. */
      bidWasIn: z.optional(z.boolean()),
      /** The result that it knowingly corrects. Two results of two browsers, neither of which names the other, are in doubt. */
      corrects: z.optional(entryIdSchema),
    },
    {
      fold({ sale = NO_SALE }, { kind: _, ...told }, noted, { device, version }) {
        const { otherResult: __, ...left } = sale;
        const result = { ...told, ...noted, ...(version >= NAMES_WHAT_IT_CORRECTS && { device }) };
        const other = contradicted(sale, result);
        return { sale: { ...left, result, ...(other && { otherResult: other }) } };
      },
      doneAt: ({ at }) => at,
      undo: 'in history',
      pack: 'sale',
    },
  ),
  /** A bid of ours above the max bid was left as it is. */
  aboutLot('risk-accepted', acceptedRiskSchema.shape, {
    fold(lot, { kind: _, ...risk }) {
      const known = biddingOf(lot);
      return { bidding: { ...known, accepted: inTime(known.accepted, risk, ({ at }) => at) } };
    },
    doneAt: ({ at }) => at,
    undo: 'in history',
    pack: 'everything',
  }),
] as const;

/** From this version on, a result names the one that it corrects. */
const NAMES_WHAT_IT_CORRECTS = 3;

/** The result before, where another browser noted it, the new one names none that it corrects, and the two differ. */
function contradicted({ result: before }: SaleState, next: NotedResult): NotedResult | undefined {
  if (before?.device === undefined || next.device === undefined || next.corrects !== undefined) return undefined;
  const same = before.device === next.device || canonicalJson(before.result) === canonicalJson(next.result);
  return same ? undefined : before;
}
