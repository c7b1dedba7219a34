import { isSamePerson, type TeamWatch } from '../domain/alerts/team-watch.ts';
import type { Rush } from '../domain/setup/store.ts';
import type { LotState } from '../folds/lot-state.ts';

/**
 * To whom a lot can be handed over: who got one before, the last one first, then who is named in the plan of duty, then who
 * is in the team; not who uses this computer.
 */
export function peopleToHandTo(lots: readonly LotState[], { weekly, exceptions }: Rush, team?: TeamWatch): string[] {
  const handed = lots.flatMap(({ clock }) => clock?.handedTo ?? []).sort((a, b) => b.at - a.at);
  const planned = [...weekly, ...exceptions.flatMap(({ hours }) => hours)].flatMap(({ who }) => who ?? []);
  const names = [...handed.map(({ to }) => to), ...planned, ...(team?.others ?? []).map(({ name }) => name)];
  return [...new Set(names)].filter((name) => !isSamePerson(name, team?.me));
}
