import type { LotState } from '../folds/lot-state.ts';

/** To whom lots were handed over before, each once, the last one first. */
export function peopleHandedTo(lots: readonly LotState[]): string[] {
  const handed = lots.flatMap(({ clock }) => clock?.handedTo ?? []).sort((a, b) => b.at - a.at);
  return [...new Set(handed.map(({ to }) => to))];
}
