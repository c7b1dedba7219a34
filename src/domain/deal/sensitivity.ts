import { type Cents, cents, LARGEST_CENTS } from '../money/cents.ts';
import type { CostLine, Deal } from './deal.ts';
import { maxBidOnly } from './max-bid.ts';

/** Every input that is moved: the retail, each group of costs, the charges, the profit asked for. */
export type InputKey = 'retail' | CostLine['kind'] | 'charge' | 'least-dollars';

/** What the max bid becomes when one input moves and everything else stays. */
export interface Move {
  /** How far the input really moved; less than asked where it would have gone below 0 (or above any real amount). */
  readonly by: Cents;
  readonly maxBid: Cents | null;
  /** Against the max bid as it stands; null when either does not exist. */
  readonly change: Cents | null;
}

export interface Sensitivity {
  readonly input: InputKey;
  readonly label: string;
  /** The input as it stands. */
  readonly cents: Cents;
  readonly up: Move;
  readonly down: Move;
  /** The max bid at the ends of the input's own range, where it has one: the spread of doubt, not of $100. */
  readonly atLow?: Move;
  readonly atHigh?: Move;
}

const LABELS: Record<InputKey, string> = {
  retail: 'Expected retail',
  doubt: 'Doubts about the listing',
  selling: 'Cost of selling',
  recon: 'Recon',
  pack: 'Pack',
  overhead: 'Overhead',
  transport: 'Transport',
  'haircut-cost': 'Correction from your own results',
  charge: 'Fixed charges of the venue',
  'least-dollars': 'Minimum profit',
};

const HUNDRED_DOLLARS = cents(10_000);

/**
 * How much each input matters: the max bid with the input moved up and down, and to the ends of its own range; largest
 * effect first. Each answer is a whole new search, because steps and fee jumps make a slope meaningless.
 * @param stopOf the price to stop at for a changed deal
 * @param by how far to move
 */
export function sensitivityOf(
  deal: Deal,
  stopOf: (deal: Deal) => Cents | null = maxBidOnly,
  by: Cents = HUNDRED_DOLLARS,
): readonly Sensitivity[] {
  const now = stopOf(deal);
  const moved = (input: InputKey, amount: number, asked: number): Move => {
    const real = cents(Math.min(Math.max(-amount, asked), LARGEST_CENTS - amount));
    const then = stopOf(moveInput(deal, input, real));
    return { by: real, maxBid: then, change: then === null || now === null ? null : cents(then - now) };
  };
  const all = inputsOf(deal).map(
    ({ input, amount, range }): Sensitivity => ({
      input,
      label: LABELS[input],
      cents: cents(amount),
      up: moved(input, amount, by),
      down: moved(input, amount, -by),
      ...(range && {
        atLow: moved(input, amount, range.low - amount),
        atHigh: moved(input, amount, range.high - amount),
      }),
    }),
  );
  return all.sort((a, b) => effect(b, now) - effect(a, now));
}

interface Input {
  readonly input: InputKey;
  readonly amount: number;
  readonly range?: { readonly low: number; readonly high: number };
}

function inputsOf(deal: Deal): readonly Input[] {
  const inputs: Input[] = [
    { input: 'retail', amount: deal.retail, ...(deal.retailRange && { range: deal.retailRange }) },
  ];
  for (const kind of new Set(deal.costs.map((line) => line.kind))) {
    const lines = deal.costs.filter((line) => line.kind === kind);
    const amount = lines.reduce((total, line) => total + line.cents, 0);
    const ranged = lines.some((line) => line.range);
    inputs.push({ input: kind, amount, ...(ranged && { range: rangeOfSum(lines, amount) }) });
  }
  inputs.push({ input: 'charge', amount: deal.charges.reduce((total, charge) => total + charge.cents, 0) });
  inputs.push({ input: 'least-dollars', amount: deal.rule.dollars });
  return inputs;
}

/** Doubts of separate lines rarely all go the same way: distances add as the root of the sum of their squares. */
function rangeOfSum(lines: readonly CostLine[], amount: number): { low: number; high: number } {
  const below = Math.hypot(...lines.map((line) => line.cents - (line.range?.low ?? line.cents)));
  const above = Math.hypot(...lines.map((line) => (line.range?.high ?? line.cents) - line.cents));
  return { low: Math.max(0, Math.round(amount - below)), high: Math.round(amount + above) };
}

function moveInput(deal: Deal, input: InputKey, by: Cents): Deal {
  switch (input) {
    case 'retail':
      return { ...deal, retail: cents(deal.retail + by) };
    case 'least-dollars':
      return { ...deal, rule: { ...deal.rule, dollars: cents(deal.rule.dollars + by) } };
    case 'charge':
      return { ...deal, charges: [...deal.charges, { label: LABELS.charge, cents: by }] };
    default:
      // One more line of the same kind moves its total: the sums know nothing else of a line.
      return { ...deal, costs: [...deal.costs, { kind: input, label: LABELS[input], cents: by }] };
  }
}

/** The largest change; where nothing pays any more, the whole max bid is what changes. */
function effect({ up, down, atLow, atHigh }: Sensitivity, now: Cents | null): number {
  const changes = [up, down, atLow, atHigh].map((move) => (move === undefined ? 0 : Math.abs(move.change ?? now ?? 0)));
  return Math.max(...changes);
}
