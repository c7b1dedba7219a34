import type { Happening } from '../journal/happening.ts';

/** What the invented manager said back to his calls so far: of which lot of the week, by its place, and what. */
export interface DemoCall {
  readonly lot: number;
  readonly happening: Happening;
}

/**
 * One of the lots that close together at noon is in other hands, and one has calls of its own.
 * @param saturday the place of Saturday's first lot in the week
 */
export const demoCalls = (saturday: number): readonly DemoCall[] => [
  { lot: saturday + 7, happening: { kind: 'handed-over', to: 'the sales desk' } },
  { lot: saturday + 3, happening: { kind: 'lot-alerts-changed', leadMinutes: [120, 30, 10, 2] } },
];
