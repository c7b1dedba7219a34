import { type Cents, ZERO } from '../money/cents.ts';
import type { Estimate } from '../money/estimate.ts';
import { formatMoney } from '../money/format-money.ts';
import { MOST_WRITTEN } from '../money/parse-money.ts';
import type { LotFacts, LotField } from './lot.ts';

/** A figure that a slip may leave and that nobody means, with a sentence that says what to do. */
export interface NotMeant {
  readonly field: LotField;
  /** "the low end of retail is $0": to stand behind "can’t be worked out:". */
  readonly short: string;
  readonly message: string;
}

/** One in ten of one car's prices never lies this many times below the likely one, nor above it. */
const WIDEST_RANGE = 20;
const EARLIEST_CLOSE = Date.UTC(1990, 0, 1);
const LATEST_CLOSE = Date.UTC(2100, 0, 1);

/**
 * What can't be meant among the facts that a price rests on. It is refused where it is typed or read; a lot that holds it
 * all the same, from an older version or another program, has no max bid until it is put right.
 */
export function notMeant(facts: LotFacts): readonly NotMeant[] {
  const found: NotMeant[] = [];
  for (const [field, what, amount] of amountsOf(facts)) {
    if (Math.abs(amount) <= MOST_WRITTEN || found.some((one) => one.field === field)) continue;
    const short = `${what} is ${formatMoney(amount)}`;
    const most = formatMoney(MOST_WRITTEN);
    found.push({
      field,
      short,
      message: `${capital(short)}, and no car comes to more than ${most}. Check the digits.`,
    });
  }
  for (const [field, what, range] of rangesOf(facts)) {
    const fault = range && rangeFault(range, what);
    if (fault !== undefined && !found.some((one) => one.field === field)) found.push({ field, ...fault });
  }
  const close = facts.close?.instant;
  if (close !== undefined && (close < EARLIEST_CLOSE || close >= LATEST_CLOSE)) {
    const message = 'The close is in no year from 1990 to 2099. Write it anew, with its year.';
    found.push({ field: 'close', short: 'the close is in no likely year', message });
  }
  return found;
}

/**
 * Why low, likely and high can't be the range of one price: a spread between them is read as a share of the price, so
 * nothing at one end, or a digit too few, would mean that nothing at all is known.
 * @param what what the range is of: "retail"
 */
export function rangeFault(
  { low, likely, high }: Estimate,
  what: string,
): { readonly short: string; readonly message: string } | undefined {
  if (low === 0 && likely > 0) {
    const short = `the low end of ${what} is $0`;
    return { short, message: `${capital(short)}. Leave it empty, or write what one in ten would bring at most.` };
  }
  const wide =
    (low !== undefined && low * WIDEST_RANGE < likely) || (high !== undefined && likely * WIDEST_RANGE < high);
  if (!wide) return undefined;
  const short = `${what} from ${formatMoney(low ?? likely)} to ${formatMoney(high ?? likely)} is no range for one car`;
  return { short, message: `${capital(short)}. Check the digits, or leave the ends empty.` };
}

function rangesOf({ retail, sealed }: LotFacts): readonly (readonly [LotField, string, Estimate | undefined])[] {
  return [
    ['retail', 'retail', retail],
    ['sealed', 'the best other bid', sealed?.rival],
  ];
}

/** Every amount that a price rests on, with what it is. */
function* amountsOf(facts: LotFacts): Generator<readonly [LotField, string, Cents]> {
  const { retail, recon = [], claims = [], ceilings = [], sealed } = facts;
  for (const [field, what] of PLAIN) yield [field, what, facts[field] ?? ZERO];
  for (const amount of amountsIn(retail)) yield ['retail', 'retail', amount];
  for (const amount of amountsIn(sealed?.rival)) yield ['sealed', 'the best other bid', amount];
  for (const line of recon)
    for (const amount of amountsIn(line.amount)) yield ['recon', `recon, ${line.label},`, amount];
  for (const claim of claims) yield ['claims', `“${claim.statement}”, if false,`, claim.worthIfFalse];
  for (const { label, list, rebate, cheaperBy } of ceilings)
    for (const amount of [list, rebate, cheaperBy]) yield ['ceilings', `the substitute ${label}`, amount];
}

const PLAIN = [
  ['increment', 'the step'],
  ['transport', 'transport'],
] as const satisfies readonly (readonly [LotField, string])[];

const amountsIn = (estimate: Estimate | undefined): readonly Cents[] =>
  estimate === undefined ? [] : [estimate.low ?? ZERO, estimate.likely, estimate.high ?? ZERO];

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
