import { base64url } from 'jose';
import { type Instant, shifted } from '../../domain/time/instant.ts';
import { DAY } from '../../domain/time/units.ts';
import { hashSchema } from '../../journal/ids.ts';
import { grant } from '../access/credentials.ts';
import { keyOfSeed, makeSeed } from '../keys/user-key.ts';
import { guestRights } from '../message/rights.ts';
import type { Role } from '../roster/roster-device.ts';
import type { OwnerState, TeamState } from '../roster/team-state.ts';
import { importSecret, writeInvitation } from './invitation.ts';

export interface Guest {
  readonly name: string;
  readonly role: Role;
}

/** What is to be kept, and the text to hand over: by hand, or by a way that only the guest reads. */
export interface Invited {
  readonly state: TeamState;
  readonly text: string;
}

/** The alphabet of ids. */
const LETTERS = '0123456789ABCDEFGHJKMNPQRSTVWXYZ';

/** An invitation that is good once, for a day. It is made on this computer alone; the server hears of it when it is used. */
export async function invite(
  state: TeamState & { readonly owner: OwnerState },
  dealership: string,
  guest: Guest,
  { now, random }: { readonly now: Instant; readonly random: (bytes: number) => Uint8Array },
): Promise<Invited> {
  const { team, addresses, owner, root } = state;
  const id = Array.from(random(16), (byte) => LETTERS.charAt(byte % 32)).join('');
  const secret = base64url.encode(random(32));
  const seed = makeSeed();
  const until = shifted(now, DAY);
  const userKey = keyOfSeed(seed).getPublicKey();
  const word = await grant(owner.server, { userKey, name: id, rights: guestRights(team, id), until });
  const open = { id, ...guest, until, secret: await importSecret(secret) };
  return {
    state: { ...state, owner: { ...owner, invitations: [...owner.invitations, open] } },
    text: writeInvitation({
      team,
      dealership,
      addresses: [...addresses],
      id,
      ...guest,
      until,
      seed,
      word,
      secret,
      root: hashSchema.parse(root),
    }),
  };
}

/** An invitation that was not used is good no more from here on: nobody answers it. */
export function withoutInvitation(state: TeamState & { readonly owner: OwnerState }, id: string): TeamState {
  const invitations = state.owner.invitations.filter((one) => one.id !== id);
  return { ...state, owner: { ...state.owner, invitations } };
}
