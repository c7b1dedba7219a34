import { type Cents, cents, ZERO } from '../money/cents.ts';
import { type Ppm, ppm } from '../money/rate.ts';
import { type Outcome, ok, refuse } from '../outcome.ts';
import type { FeeToken } from './fee-table-tokens.ts';

/** The prices that one row of a pasted table speaks of, as it states them. */
export interface PriceSpan {
  readonly from?: Cents;
  /** "Over $500" leaves $500 itself to the row before. */
  readonly fromExcluded?: boolean;
  readonly to?: Cents;
  /** "Under $500" leaves $500 itself to the next row. */
  readonly toExcluded?: boolean;
}

export interface FeeAmounts {
  readonly flatCents: Cents;
  readonly ratePpm: Ppm;
  readonly minimumCents?: Cents;
  readonly maximumCents?: Cents;
}

export type FeeRow = PriceSpan & FeeAmounts;

/** Reads one row: the prices first, then the fee. */
export function feeRow(tokens: readonly FeeToken[]): Outcome<FeeRow> {
  if (tokens.some((token) => token.kind === 'unreadable')) {
    return refuse(
      'unreadable',
      'A figure in this line can be read in more than one way. Write it like 1,250.00 or 2.5%.',
    );
  }
  const span = priceSpan(tokens);
  if (!span.ok) return span;
  const amounts = feeAmounts(span.value.rest);
  return amounts.ok ? ok({ ...span.value.span, ...amounts.value }) : amounts;
}

interface SpanAndRest {
  readonly span: PriceSpan;
  readonly rest: readonly FeeToken[];
}

/** The price part of a row, and what follows it. */
export function priceSpan(tokens: readonly FeeToken[]): Outcome<SpanAndRest> {
  const dense = withoutGaps(tokens);
  const lead = dense[0]?.kind ?? 'gap';
  const led = isLead(lead) && dense[1]?.kind === 'money';
  const at = led ? 1 : 0;
  const [price, joint, second] = dense.slice(at);
  if (price?.kind !== 'money') {
    return refuse('no-price', 'This line has no price. Start it with one, such as 500 – 999.99.');
  }
  const found = (span: PriceSpan, count: number) => ok({ span, rest: dense.slice(at + count) });
  if (led && lead === 'up-to') return found({ to: price.cents }, 1);
  if (led && lead === 'under') return found({ to: price.cents, toExcluded: true }, 1);

  const from = { from: price.cents, ...(led && lead === 'over' ? { fromExcluded: true } : {}) };
  const joins = joint?.kind === 'to' || joint?.kind === 'up-to' || joint?.kind === 'under';
  if (joins && second?.kind === 'money') {
    return found({ ...from, to: second.cents, ...(joint.kind === 'under' ? { toExcluded: true } : {}) }, 3);
  }
  if (joint?.kind === 'onward' || (joint?.kind === 'plus' && second !== undefined)) return found(from, 2);
  if (joint?.kind === 'or-less') return found({ to: price.cents }, 2);
  // Bare columns: from, to, fee. A second figure below the first can't be an end, so it is a fee.
  const figureBehind = second?.kind === 'money' || second?.kind === 'percent';
  if (joint?.kind === 'money' && joint.cents > price.cents && figureBehind) {
    return found({ ...from, to: joint.cents }, 2);
  }
  return found(from, 1);
}

const isLead = (kind: FeeToken['kind']) => kind === 'from' || kind === 'over' || kind === 'up-to' || kind === 'under';

/** The fee part of a row: `flat + percent`, with a least and a most. */
export function feeAmounts(tokens: readonly FeeToken[]): Outcome<FeeAmounts> {
  let flat: Cents | undefined;
  let rate: Ppm | undefined;
  let least: Cents | undefined;
  let most: Cents | undefined;
  let next: 'amount' | 'least' | 'most' = 'amount';
  let free = false;
  for (const token of tokens) {
    if (token.kind === 'least' || token.kind === 'greater-of') next = 'least';
    else if (token.kind === 'most' || token.kind === 'lesser-of' || token.kind === 'up-to') next = 'most';
    else if (token.kind === 'plus') next = 'amount';
    else if (token.kind === 'no-fee') free = true;
    else if (token.kind === 'percent') {
      if (rate !== undefined)
        return refuse('two-percentages', 'This line has two percentages. Keep the one that is the fee.');
      rate = token.ppm;
    } else if (token.kind === 'money') {
      if (next === 'least' && least === undefined) least = token.cents;
      else if (next === 'most' && most === undefined) most = token.cents;
      else if (flat === undefined) flat = token.cents;
      else {
        return refuse(
          'two-fees',
          'This line has more than one fee. Paste one fee column at a time, or name the columns in a line above: from, to, fee, percent, minimum, maximum.',
        );
      }
      next = 'amount';
    } else if (token.kind !== 'gap' && token.kind !== 'onward' && token.kind !== 'to') {
      return refuse(
        'no-fee',
        'The fee in this line can’t be told apart from its prices. Write it like 500 – 999.99  $125.',
      );
    }
  }
  if (flat === undefined && rate === undefined && !free) {
    return refuse('no-fee', 'This line has prices but no fee. Add the fee after them.');
  }
  if ((least ?? ZERO) > (most ?? Number.POSITIVE_INFINITY)) {
    return refuse('limits', 'The minimum in this line is above the maximum. Correct one of them.');
  }
  return ok({
    flatCents: flat ?? cents(0),
    ratePpm: rate ?? ppm(0),
    ...(least === undefined ? {} : { minimumCents: least }),
    ...(most === undefined ? {} : { maximumCents: most }),
  });
}

export const withoutGaps = (tokens: readonly FeeToken[]) => tokens.filter((token) => token.kind !== 'gap');
