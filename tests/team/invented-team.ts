import type { DeviceId } from '../../src/journal/ids.ts';
import { openTeamStore, type TeamStore } from '../../src/store/team/team-store.ts';
import { fetchNew } from '../../src/team/incoming/fetch.ts';
import { type FetchResult, FROM_THE_BEGINNING, type Position } from '../../src/team/incoming/fetching.ts';
import type { Member, Membership } from '../../src/team/incoming/membership.ts';
import { keyOfSeed, makeSeed } from '../../src/team/keys/user-key.ts';
import { type TeamId, teamIdSchema } from '../../src/team/message/team-id.ts';
import { type SendResult, send } from '../../src/team/outgoing/send.ts';
import { makeTeamKey, type TeamKey } from '../../src/team/seal/seal.ts';
import type { Wire } from '../../src/team/wire/wire.ts';
import { testClock, testRandom, value } from '../store/open-test-store.ts';

export const TEAM: TeamId = teamIdSchema.parse('TEAM000000000001');

/** One computer of a team: its journal as sending and fetching see it, and how far it has read. */
export interface Computer {
  readonly journal: TeamStore;
  readonly device: DeviceId;
  position: Position;
  readonly membership: Membership;
  readonly keys: readonly TeamKey[];
  readonly seed: string;
  send(wire: Wire): Promise<SendResult>;
  fetch(wire: Wire): Promise<FetchResult>;
}

/** The stores with these names as the computers of one team, which all let each other in. */
export async function inventedTeam(names: readonly string[], key?: TeamKey): Promise<readonly Computer[]> {
  const teamKey = key ?? (await makeTeamKey(1));
  const members = new Map<DeviceId, Member>();
  const computers: Computer[] = [];
  for (const name of names) {
    const journal = value(await openTeamStore({ name, now: testClock().now, random: testRandom(), channel: false }));
    const device = await journal.device();
    const seed = makeSeed();
    members.set(device, {
      publicKey: await journal.publicKey(),
      userKey: keyOfSeed(seed).getPublicKey(),
      ends: null,
    });
    const membership = { team: TEAM, keys: new Map([[teamKey.number, teamKey.key]]), members };
    const computer: Computer = {
      journal,
      device,
      position: FROM_THE_BEGINNING,
      membership,
      keys: [teamKey],
      seed,
      send: (wire) => send({ chain: journal, wire, team: TEAM, keys: [teamKey], seed }),
      async fetch(wire) {
        const result = await fetchNew({ journal, wire, membership: computer.membership }, computer.position);
        computer.position = result.position;
        return result;
      },
    };
    computers.push(computer);
  }
  return computers;
}
