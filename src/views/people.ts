import type { Rush } from '../domain/setup/store.ts';
import type { LotState } from '../folds/lot-state.ts';

/** To whom a lot can be handed over: who got one before, the last one first, then who is named in the plan of duty. */
export function peopleToHandTo(lots: readonly LotState[], { weekly, exceptions }: Rush): string[] {
  const handed = lots.flatMap(({ clock }) => clock?.handedTo ?? []).sort((a, b) => b.at - a.at);
  const planned = [...weekly, ...exceptions.flatMap(({ hours }) => hours)].flatMap(({ who }) => who ?? []);
  return [...new Set([...handed.map(({ to }) => to), ...planned])];
}
