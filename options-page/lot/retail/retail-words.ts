import type { AppraisedRetail } from '../../../src/domain/appraisal/appraised-retail.ts';
import type { Cents } from '../../../src/domain/money/cents.ts';
import { formatMoney } from '../../../src/domain/money/format-money.ts';

/** A retail figure is never known to the cent. */
export const whole = (amount: Cents): string => formatMoney(amount, { cents: 'never' });

/** What a retail figure rests on: "3 comparables and your guess". */
export function basisWords({ basis, grid, ceilings, cap, uncapped, mean }: AppraisedRetail): string {
  const counted = grid?.counted ?? 0;
  const comps = counted === 1 ? '1 comparable' : `${counted} comparables`;
  const words = {
    guess: 'Your estimate alone, with how far one car sells from another of its kind',
    comps: comps.charAt(0).toUpperCase() + comps.slice(1),
    'guess-and-comps': `${comps.charAt(0).toUpperCase()}${comps.slice(1)} and your estimate`,
  }[basis];
  const alone = basis === 'comps' && counted === 1;
  const lowest = ceilings.find((one) => one.lowest);
  if (cap === undefined || lowest === undefined || uncapped === mean) return `${words}.`;
  if (basis === 'guess')
    return `Your estimate alone says ${whole(uncapped)}; “${lowest.ceiling.label}” at ${whole(cap)} holds it down.`;
  return `${words} ${alone ? 'says' : 'say'} ${whole(uncapped)}; “${lowest.ceiling.label}” at ${whole(cap)} holds it down.`;
}

/** "1 in 10 below $15,900, 1 in 10 above $19,500"; where a ceiling cuts it off, "never above". */
export const rangeWords = ({ low, high, cap }: Pick<AppraisedRetail, 'low' | 'high' | 'cap'>): string =>
  `1 in 10 below ${whole(low)}, ${high === cap ? 'never' : '1 in 10'} above ${whole(high)}`;
