import type { Instant } from '../domain/time/instant.ts';
import { HOUR } from '../domain/time/units.ts';
import type { SaleState } from '../journal/states/sale-state.ts';

/** A close that moves by more than this is another sale of the car, not more time. */
const MORE_TIME = 12 * HOUR;

/**
 * The sale once its close has moved: where the sale added time after somebody noted how it ended, it goes on, and what was
 * noted was too early. A win and a lot that was withdrawn are left alone, as is one that ended early.
 */
export function saleAfterMove(
  sale: SaleState,
  { from, to }: { readonly from: Instant | undefined; readonly to: Instant | undefined },
  now: Instant,
): SaleState {
  const noted = sale.result;
  if (noted === undefined || from === undefined || to === undefined) return sale;
  const { ended } = noted.result;
  const goesOn = to > now && to > from && to - from < MORE_TIME;
  if (!goesOn || noted.early === true || ended === 'won' || ended === 'withdrawn') return sale;
  const { result: _, otherResult: __, ...left } = sale;
  return left;
}
