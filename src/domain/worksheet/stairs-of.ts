import type { Line, LineGroup } from '../deal/price-breakdown.ts';
import { type Cents, cents, sumCents } from '../money/cents.ts';
import type { UncertainCost } from '../risk/cost-grid.ts';
import { countedCost } from '../risk/cost-spread.ts';
import { sumRange } from '../risk/sum-range.ts';
import type { Walk } from './walk-of.ts';

/** What a flight of the stairs is about, in the order in which they are walked down. */
export type FlightKind = 'value' | 'doubt' | 'recon' | 'getting' | 'holding' | 'corrections' | 'profit';

/** Steps that belong together, and what they come to. */
export interface Flight {
  readonly kind: FlightKind;
  readonly steps: readonly Line[];
  /** The sum of its steps; negative where they give more than they take. */
  readonly cents: Cents;
  /**
   * One in ten below, one in ten above. Of several steps with a spread of their own it is that of their sum, which is narrower
   * than their spreads added up; where that is not known, there is none.
   */
  readonly range?: { readonly low: Cents; readonly high: Cents };
}

const KIND: Readonly<Record<LineGroup, FlightKind>> = {
  retail: 'value',
  title: 'value',
  ceiling: 'value',
  'haircut-cost': 'corrections',
  doubt: 'doubt',
  recon: 'recon',
  fee: 'getting',
  charge: 'getting',
  transport: 'getting',
  undone: 'getting',
  interest: 'holding',
  'own-cash': 'holding',
  holding: 'holding',
  pack: 'holding',
  overhead: 'holding',
  selling: 'holding',
  'required-profit': 'profit',
  slack: 'profit',
  'risk-cap': 'profit',
  sealed: 'profit',
};

const ORDER: readonly FlightKind[] = ['value', 'doubt', 'recon', 'getting', 'holding', 'corrections', 'profit'];

/**
 * The steps of a walk in flights: every step once, within a flight in the order of the walk; empty flights are left out.
 * @param uncertain what recon and doubts rest on, for the spread of their sums
 */
export function stairsOf({ steps }: Pick<Walk, 'steps'>, uncertain: readonly UncertainCost[] = []): readonly Flight[] {
  return ORDER.map((kind): Flight => {
    const own = steps.filter(({ group }) => KIND[group] === kind);
    const cents = sumCents(own.map((step) => step.cents));
    const range = rangeOf(kind, own, cents, uncertain);
    return range === undefined ? { kind, steps: own, cents } : { kind, steps: own, cents, range };
  }).filter((flight) => flight.steps.length > 0);
}

function rangeOf(
  kind: FlightKind,
  steps: readonly Line[],
  sum: Cents,
  uncertain: readonly UncertainCost[],
): Flight['range'] {
  const [unsure, ...others] = steps.filter(({ range }) => range !== undefined);
  if (unsure?.range === undefined) return undefined;
  if (others.length === 0) return moved(unsure.range, less(sum, unsure.cents));
  if (kind !== 'doubt' && kind !== 'recon') return undefined;
  const costs = uncertain.filter(({ doubt = false }) => doubt === (kind === 'doubt'));
  if (costs.length === 0) return undefined;
  // What is certain is counted by its steps and is no uncertain cost.
  const counted = sumCents(costs.map((cost) => cents(countedCost(cost))));
  const { low, high } = sumRange(costs);
  return moved({ low: cents(Math.round(low)), high: cents(Math.round(high)) }, less(sum, counted));
}

const less = (sum: Cents, part: Cents): Cents => cents(sum - part);
const moved = ({ low, high }: { readonly low: Cents; readonly high: Cents }, by: Cents) => ({
  low: cents(low + by),
  high: cents(high + by),
});
