import { beforeEach, describe, expect, test } from 'vitest';
import { instant } from '../../src/domain/time/instant.ts';
import { hashSchema } from '../../src/journal/ids.ts';
import { newServerSeeds } from '../../src/team/access/server-keys.ts';
import { putOut } from '../../src/team/joining/put-out.ts';
import { newTeam, startTeam } from '../../src/team/joining/start-team.ts';
import { rosterSubject } from '../../src/team/message/subjects.ts';
import { teamIdSchema } from '../../src/team/message/team-id.ts';
import { membershipOf, openRoster } from '../../src/team/roster/open-roster.ts';
import { readRoster } from '../../src/team/roster/read-roster.ts';
import type { RosterDevice } from '../../src/team/roster/roster-device.ts';
import { readRosterMessage, writeRosterMessage } from '../../src/team/roster/roster-message.ts';
import type { TeamState } from '../../src/team/roster/team-state.ts';
import { addToRoster, signedAct } from '../../src/team/roster/write-roster.ts';
import { makeBoxKeys, publicBoxKey } from '../../src/team/seal/box.ts';
import { makeTeamKey } from '../../src/team/seal/seal.ts';
import { at } from '../folds/journal-arbitrary.ts';
import { value } from '../store/open-test-store.ts';
import { type InventedServer, inventedServer } from './invented-server.ts';
import { TEAM } from './invented-team.ts';
import { testDevice } from './test-device.ts';

const START = instant(Date.UTC(2026, 3, 11));
const OTHER_TEAM = teamIdSchema.parse('TEAM000000000002');
let server: InventedServer;
let owner: TeamState;
let other: TeamState;

const aTeam = (digit: number) =>
  newTeam({ ...newServerSeeds(), team: TEAM, addresses: ['ws://127.0.0.1:1'] }, 'Cottonwood', {
    device: testDevice(digit),
    name: 'somebody',
    signKey: null,
  });

/** A team with an owner, and a manager who has read its roster. */
beforeEach(async () => {
  server = inventedServer();
  owner = await aTeam(1);
  value(await startTeam(owner, server.wire));
  const box = await makeBoxKeys();
  const stranger = await aTeam(2);
  const { members } = value(await readRoster(stranger, inventedServerOf(stranger).wire)).open.roster;
  const { ends: _, ...device } = at([...members.values()], 0);
  const manager: RosterDevice = { ...device, role: 'manager', boxKey: await publicBoxKey(box) };
  owner = value(await addToRoster(owner, server.wire, await act({ act: 'let-in', device: manager })));
  other = { ...stranger, box, keys: owner.keys, root: owner.root, roster: [], owner: null };
  other = value(await readRoster(other, server.wire)).state;
});

const inventedServerOf = (state: TeamState): InventedServer => {
  const one = inventedServer();
  one.messages = state.roster.map((data, i) => ({ subject: rosterSubject(TEAM), data, place: i + 1, at: START }));
  return one;
};

const rosterOf = async (state: TeamState) => (await openRoster(state, state.roster)).open?.roster ?? null;
const act = async (one: Parameters<typeof signedAct>[2], state = owner) => signedAct(state, await rosterOf(state), one);

/** What the manager's computer makes of a roster that ends with such a message: the reason, or null when it is taken. */
async function seen(text: string): Promise<string | null> {
  return (await openRoster(other, [...other.roster, text])).stopped?.reason ?? null;
}

describe('the roster of a team', () => {
  test('tells whose messages count and with which keys', async () => {
    const { open } = await openRoster(other, other.roster);
    if (open === null) throw new Error('not open');
    const { members, keys } = membershipOf(open);
    expect([...members.keys()]).toEqual([testDevice(1), testDevice(2)]);
    expect([...keys.keys()]).toEqual([1]);
  });

  test('takes nothing that no owner signed, that is at another place, altered, sealed with another key, or can’t be', async () => {
    const good = await act({ act: 'put-out', device: testDevice(2), ends: 0, key: 2 });
    const message = readRosterMessage(good);
    if (message === null) throw new Error('not read');
    const { signature, ...unsigned } = message;
    const attacks: [string, string, string | null][] = [
      ['as the owner wrote it', good, null],
      ['signed by a manager in the owner’s name', writeRosterMessage(unsigned, other.credentials.seed), 'altered'],
      [
        'signed by a manager in his own',
        writeRosterMessage({ ...unsigned, by: testDevice(2) }, other.credentials.seed),
        'not-owner',
      ],
      [
        'of a device that nobody let in',
        writeRosterMessage({ ...unsigned, by: testDevice(9) }, owner.credentials.seed),
        'not-owner',
      ],
      ['with another number', writeRosterMessage({ ...unsigned, number: 4 }, owner.credentials.seed), 'not-next'],
      [
        'after another message',
        writeRosterMessage({ ...unsigned, before: hashSchema.parse('0'.repeat(64)) }, owner.credentials.seed),
        'not-next',
      ],
      ['of another team', writeRosterMessage({ ...unsigned, team: OTHER_TEAM }, owner.credentials.seed), 'other-team'],
      ['the same again', at(other.roster, 1), 'not-next'],
      [
        'its signature changed',
        JSON.stringify({ ...message, signature: signature.replace(/^./, (one) => (one === '0' ? '1' : '0')) }),
        'altered',
      ],
      [
        'under a key that is not here',
        await signedAct({ ...owner, keys: [await makeTeamKey(7)] }, await rosterOf(owner), {
          act: 'put-out',
          device: testDevice(2),
          ends: 0,
          key: 2,
        }),
        'no-key',
      ],
      [
        'under another key of the same number',
        await signedAct({ ...owner, keys: [await makeTeamKey(1)] }, await rosterOf(owner), {
          act: 'put-out',
          device: testDevice(2),
          ends: 0,
          key: 2,
        }),
        'altered',
      ],
      ['who puts out a stranger', await act({ act: 'put-out', device: testDevice(9), ends: 0, key: 2 }), 'bad-act'],
      ['with a key out of its order', await act({ act: 'put-out', device: testDevice(2), ends: 0, key: 3 }), 'bad-act'],
      [
        'that starts it anew',
        await act({
          act: 'started',
          name: 'x',
          device: at(
            [...((await rosterOf(owner))?.members.values() ?? [])].map(({ ends: _, ...device }) => device),
            0,
          ),
        }),
        'bad-act',
      ],
      ['no message at all', 'x', 'not-a-message'],
    ];
    for (const [what, text, reason] of attacks) expect([what, await seen(text)]).toEqual([what, reason]);
  });

  test('of another team is not taken in the place of the one that was joined', async () => {
    const false_ = await aTeam(1);
    const { told, state } = value(await readRoster(other, inventedServerOf(false_).wire));
    expect([told, state.roster]).toEqual([[expect.stringMatching(/another roster/)], other.roster]);
    expect((await openRoster(other, false_.roster)).stopped).toMatchObject({ reason: 'other-root' });
  });

  test('holds on a server that was restored from an older copy, which gets the rest again from an owner', async () => {
    owner = value(await putOut(owner, server.wire, testDevice(2), 0));
    server.messages = server.messages.slice(0, 1);
    const manager = value(await readRoster(other, server.wire));
    expect(manager.told).toEqual([expect.stringMatching(/restored from an older copy/)]);
    expect(manager.open.roster.members.has(testDevice(2))).toBe(true);
    expect(value(await readRoster(owner, server.wire)).told).toEqual([]);
    expect(server.messages.map(({ data }) => data)).toEqual(owner.roster);
  });

  test('is not written when another owner was faster', async () => {
    const first = await act({ act: 'put-out', device: testDevice(2), ends: 0, key: 2 });
    server.messages.push({ ...at(server.messages, 0), place: 9, data: 'another’s' });
    expect(await addToRoster(owner, server.wire, first)).toMatchObject({ reason: 'roster-moved' });
  });
});
