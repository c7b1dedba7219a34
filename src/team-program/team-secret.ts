import type { KeptTeam, ShownTeam } from '../store/connection/kept-team.ts';
import type { PendingJoin } from '../team/joining/join.ts';
import type { OpenRoster } from '../team/roster/open-roster.ts';
import type { TeamState } from '../team/roster/team-state.ts';

/**
 * What lies in the store of a team, keys and all: of one that was started and that the server does not know yet, of one that
 * this computer asks to be let into, or of one that it is in.
 */
export type TeamSecret =
  | { readonly is: 'starting' | 'in'; readonly state: TeamState }
  | { readonly is: 'asking'; readonly pending: PendingJoin };

/** Only what this program wrote lies there. */
export const secretOf = ({ secret }: KeptTeam): TeamSecret => secret as TeamSecret;

/** A team as it is to be kept, with what the screens may know of it. */
export function keptAs(
  state: TeamState,
  before: Pick<ShownTeam, 'name' | 'role' | 'people'>,
  is: 'starting' | 'in',
  open: OpenRoster | null,
): KeptTeam {
  const members = open === null ? null : [...open.roster.members.values()];
  const own = members?.find(({ device }) => device === state.device);
  return {
    shown: {
      name: open?.roster.name ?? before.name,
      addresses: state.addresses,
      state: own !== undefined && own.ends !== null ? 'out' : is,
      role: own?.role ?? before.role,
      people:
        members?.map(({ device, name, role, ends }) => ({ device, name, role, isOut: ends !== null })) ?? before.people,
      invitations: (state.owner?.invitations ?? []).map(({ id, name, role, until }) => ({ id, name, role, until })),
    },
    secret: { is, state } satisfies TeamSecret,
  };
}
