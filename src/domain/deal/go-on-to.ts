import type { Cents } from '../money/cents.ts';
import type { AcceptedInterval } from '../price/accepted-intervals.ts';

/**
 * How far one may go when the price has already reached `ask`: the end of the accepted interval that holds it. Null when
 * the ask itself does not pay, even where a higher price would: nobody should bid through a hole to get there.
 * @param ask the next bid that the sale would take
 */
export function goOnTo({ accepted }: { readonly accepted: readonly AcceptedInterval[] }, ask: Cents): Cents | null {
  return accepted.find(({ low, high }) => low <= ask && ask <= high)?.high ?? null;
}
