import type { TeamWatch } from '../../domain/alerts/team-watch.ts';
import type { Instant } from '../../domain/time/instant.ts';
import { MINUTE } from '../../domain/time/units.ts';
import type { TeamPerson } from '../connection/kept-team.ts';
import type { TeamStanding } from './team-state.ts';

/** Who has not heard from his team for longer than this takes no silence for "somebody has it". */
const HEARD_WITHIN = 10 * MINUTE;

/** Who uses this computer, by the list of his team; null while it is in none, or nobody has let it in. */
export function personHere(team: TeamStanding | null | undefined): TeamPerson | null {
  if (team === null || team === undefined || team.shown.state !== 'in') return null;
  return team.shown.people.find(({ device, isOut }) => device === team.device && !isOut) ?? null;
}

/** The team as far as reminders go; absent in no team, and while this computer is out of step with it. */
export function teamWatch(team: TeamStanding | null, now: Instant): TeamWatch | undefined {
  const me = personHere(team);
  if (team === null || me === null || !isInStep(team, now)) return undefined;
  const others = team.shown.people.filter(({ device, isOut }) => device !== team.device && !isOut);
  return { me: me.name, myRole: me.role, others: others.map(({ name, role }) => ({ name, role })) };
}

const isInStep = ({ inStepAt, stopped }: TeamStanding, now: Instant): boolean =>
  stopped === null && inStepAt !== null && now - inStepAt <= HEARD_WITHIN;
