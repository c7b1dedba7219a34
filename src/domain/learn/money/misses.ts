import { type Cents, cents } from '../../money/cents.ts';
import type { LocalDate } from '../../time/local-date.ts';
import type { Forecast } from '../forecast.ts';
import type { Bought, PastLot } from '../happened.ts';
import { type LostLot, lostLot } from './lost-lot.ts';

/** A forecast that was clearly off, or a lot that was lost and should not have been. */
export type Miss = {
  readonly lot: PastLot['lot'];
  readonly title: string;
  /** When it came to light, in the store's zone. */
  readonly date: LocalDate;
} & (
  | { readonly kind: 'retail'; readonly actual: Cents; readonly low: Cents; readonly high: Cents }
  | { readonly kind: 'recon'; readonly actual: Cents; readonly expected: Cents }
  | { readonly kind: 'fees'; readonly actual: Cents; readonly expected: Cents }
  | { readonly kind: 'days'; readonly days: number; readonly median: number; readonly sold: boolean }
  | { readonly kind: 'canceled'; readonly lost: Cents | null }
  | { readonly kind: 'lost'; readonly why: LostLot }
);

/** Recon without ranges counts as off when it ends a quarter over its estimate. */
const RECON_SLACK = 0.25;
/** A car counts as slow when nine in ten would have sold by then. */
const SLOW = 0.1;

/** Every miss, the latest first. What went better than the whole range is one too: bids were too low for it. */
export function missesOf(past: readonly PastLot[], today: LocalDate): readonly Miss[] {
  return past
    .filter(({ forecast }) => !forecast.late)
    .flatMap((one) => missesOfLot(one, today))
    .toSorted((a, b) => (a.date === b.date ? compare(a.lot, b.lot) : compare(b.date, a.date)));
}

const compare = (a: string, b: string): number => (a === b ? 0 : a < b ? -1 : 1);

function missesOfLot(one: PastLot, today: LocalDate): Miss[] {
  const { lot, title, forecast, happened } = one;
  const ended = { lot, title, date: happened.date };
  const why = lostLot(one);
  if (why?.because === 'execution') return [{ ...ended, kind: 'lost', why }];
  const { bought } = happened;
  if (bought === null) return [];
  if (happened.canceled) return [{ ...ended, kind: 'canceled', lost: bought.lost }];
  const settled = { lot, title, date: bought.sale?.date ?? today };
  return [
    ...retailMiss(forecast, bought).map((miss) => ({ ...settled, ...miss })),
    ...reconMiss(forecast, bought).map((miss) => ({ ...settled, ...miss })),
    ...feeMiss(forecast, bought).map((miss) => ({ ...ended, ...miss })),
    ...daysMiss(forecast, bought).map((miss) => ({ ...settled, ...miss })),
  ];
}

function retailMiss({ retail }: Forecast, { sale }: Bought) {
  if (retail === null || sale === null || sale.buyer === 'wholesale') return [];
  const { low, high } = retail;
  if (low <= sale.cents && sale.cents <= high) return [];
  return [{ kind: 'retail' as const, actual: sale.cents, low, high }];
}

/** Over the high end of its lines taken together; their doubts add as the root of the sum of squares. */
function reconMiss({ deal, purchase }: Forecast, { recon: actual }: Bought) {
  if (deal === null || purchase === null || actual === null) return [];
  const over = purchase.lines.flatMap(({ cost, range, cents: amount }) =>
    cost !== 'recon' ? [] : [range === undefined ? amount * RECON_SLACK : range.high - amount],
  );
  return actual > deal.recon + Math.hypot(...over) ? [{ kind: 'recon' as const, actual, expected: deal.recon }] : [];
}

function feeMiss({ deal }: Forecast, { fees: actual }: Bought) {
  return deal === null || actual === null || actual === deal.fees
    ? []
    : [{ kind: 'fees' as const, actual, expected: cents(deal.fees) }];
}

function daysMiss({ days: { survives, median, horizon } }: Forecast, { days, sold }: Bought) {
  const slow = days > horizon || survives(days) < SLOW;
  return slow ? [{ kind: 'days' as const, days, median, sold }] : [];
}
