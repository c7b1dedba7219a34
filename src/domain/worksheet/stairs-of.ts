import type { Line, LineGroup } from '../deal/price-breakdown.ts';
import { type Cents, sumCents } from '../money/cents.ts';
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
   * One in ten below, one in ten above, where a single step has a spread and the others are certain. Spreads of several steps
   * don't add up, so then there is none.
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

/** The steps of a walk in flights: every step once, within a flight in the order of the walk; empty flights are left out. */
export function stairsOf({ steps }: Pick<Walk, 'steps'>): readonly Flight[] {
  return ORDER.map((kind) =>
    flightOf(
      kind,
      steps.filter(({ group }) => KIND[group] === kind),
    ),
  ).filter((flight) => flight.steps.length > 0);
}

function flightOf(kind: FlightKind, steps: readonly Line[]): Flight {
  const cents = sumCents(steps.map((step) => step.cents));
  const [unsure, ...others] = steps.filter(({ range }) => range !== undefined);
  if (unsure?.range === undefined || others.length > 0) return { kind, steps, cents };
  const rest = sumCents([cents, -unsure.cents as Cents]);
  const { low, high } = unsure.range;
  return { kind, steps, cents, range: { low: sumCents([low, rest]), high: sumCents([high, rest]) } };
}
