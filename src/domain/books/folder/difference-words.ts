import type { CostKind } from '../../accounts/cost-kind.ts';
import { type Cents, cents } from '../../money/cents.ts';
import { formatMoney } from '../../money/format-money.ts';
import { type ExpectedLine, rangeInWords } from './expected.ts';

/** Why an actual amount differs from what was expected, or that it does not, in a sentence. */
export function differenceInWords(cost: CostKind, expected: ExpectedLine | null, actual: Cents | null): string {
  if (expected === null) return 'Not expected: it is not in Setup or on the worksheet.';
  if (actual === null) return NOT_YET[cost];
  const more = actual - expected.cents;
  if (more === 0) return 'As expected.';
  const size = `${formatMoney(cents(Math.abs(more)))} ${more > 0 ? 'more' : 'less'}`;
  switch (cost) {
    case 'hammer':
      return `${size} than the result says (${formatMoney(expected.cents)}). One of them is wrong: correct the result, or ask the venue.`;
    case 'fee':
      return `${size} than the fee schedule: ${expected.from}.`;
    case 'transport':
      return `${size} than expected: ${expected.from.toLowerCase()}.`;
    case 'recon':
      return expected.range === undefined
        ? `${size} than the worksheet.`
        : `${size} than likely; ${within(actual, expected.range)}.`;
    default:
      return `${size} than the worksheet, which assumes an average time to sell.`;
  }
}

const NOT_YET: Readonly<Record<CostKind, string>> = {
  hammer: 'Not recorded yet.',
  fee: 'No bill yet.',
  transport: 'No bill yet.',
  recon: 'No bill yet; it may not be needed.',
  interest: 'Not billed yet.',
  'floor-fee': 'Not billed yet.',
  'sales-tax': 'No bill yet.',
  other: 'No bill yet.',
};

function within(actual: Cents, range: NonNullable<ExpectedLine['range']>): string {
  const words = rangeInWords(range);
  if (actual > range.high) return `above the range you gave, ${words}`;
  return actual < range.low ? `below the range you gave, ${words}` : `within the range you gave, ${words}`;
}
