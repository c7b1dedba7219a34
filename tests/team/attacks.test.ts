import { afterAll, beforeAll, expect, test } from 'vitest';
import { instant } from '../../src/domain/time/instant.ts';
import { HOUR } from '../../src/domain/time/units.ts';
import { zoneSchema } from '../../src/domain/time/zone.ts';
import { entryHash } from '../../src/journal/entry-hash.ts';
import type { Envelope } from '../../src/journal/read-entry.ts';
import { newServerSeeds } from '../../src/team/access/server-keys.ts';
import { fetchNew } from '../../src/team/incoming/fetch.ts';
import { FROM_THE_BEGINNING } from '../../src/team/incoming/fetching.ts';
import type { Membership } from '../../src/team/incoming/membership.ts';
import { answerGuests } from '../../src/team/joining/answer.ts';
import { readInvitation } from '../../src/team/joining/invitation.ts';
import { invite } from '../../src/team/joining/invite.ts';
import { join, newJoin } from '../../src/team/joining/join.ts';
import { newTeam, startTeam } from '../../src/team/joining/start-team.ts';
import { makeSeed } from '../../src/team/keys/user-key.ts';
import { readMessage, writeMessage } from '../../src/team/message/entries-message.ts';
import { signSeen } from '../../src/team/message/seen.ts';
import { rosterSubject, subjectOf } from '../../src/team/message/subjects.ts';
import { readRoster } from '../../src/team/roster/read-roster.ts';
import { readRosterMessage, writeRosterMessage } from '../../src/team/roster/roster-message.ts';
import type { TeamState } from '../../src/team/roster/team-state.ts';
import { makeTeamKey, seal, type TeamKey, unseal } from '../../src/team/seal/seal.ts';
import type { Delivered } from '../../src/team/wire/wire.ts';
import { at } from '../folds/journal-arbitrary.ts';
import { testRandom, value } from '../store/open-test-store.ts';
import { threeStores } from '../store/store-acts.ts';
import { inventedServer } from './invented-server.ts';
import { type Computer, inventedTeam, TEAM } from './invented-team.ts';
import { testDevice } from './test-device.ts';

/** A message of the buyer's, and what is sealed in it. */
interface Sent {
  readonly message: Delivered;
  readonly entry: Envelope;
}

interface Attacked {
  readonly messages: readonly Delivered[];
  readonly membership?: Partial<Membership>;
}

/** What was done to the messages; what has to be said; how many of the four entries have to be here after it. */
type Attack = readonly [string, (sent: readonly Sent[]) => Attacked | Promise<Attacked>, RegExp | null, number];

const table: string[] = [];
let key: TeamKey;
let buyer: Computer;
let other: Computer;
let receivers: Computer[];
let honest: readonly Delivered[];
let sent: readonly Sent[];

/** The buyer has sent three messages of an entry each, then the bookkeeper one. */
beforeAll(async () => {
  key = await makeTeamKey(1);
  const names = ['buyer', 'bookkeeper', ...ATTACKS.map(([what]) => what)];
  const stores = await threeStores(names);
  const computers = await inventedTeam(names, key);
  [buyer, other, ...receivers] = computers as [Computer, Computer, ...Computer[]];
  const server = inventedServer();
  for (const notes of ['one', 'two', 'three']) {
    value(await at(stores, 0).addLots('typed', [{ facts: { notes } }]));
    await buyer.send(server.wire);
  }
  value(await at(stores, 1).addLots('typed', [{ facts: { notes: 'another’s' } }]));
  await other.send(server.wire);
  honest = server.messages;
  sent = await Promise.all(
    honest.map(async (message) => {
      const text = value(await unseal(message.data, () => key.key)).text;
      return { message, entry: at(value(readMessage(text)).entries as Envelope[], 0) };
    }),
  );
  for (const one of stores) one.close();
}, 60_000);

afterAll(() => {
  console.log(['attack | said | entries here of 4', ...table].join('\n'));
});

/** An entry in a message of its own, signed by the buyer's computer, with its hash made again. */
async function written(changed: Partial<Envelope> & Record<string, unknown>, as: Sent): Promise<Delivered> {
  const { hash: _, ...fields } = { ...as.entry, ...changed };
  const entry = { ...fields, hash: entryHash(fields) } as Envelope;
  const head = await buyer.journal.signedEnd(entry);
  return { ...as.message, data: await seal(writeMessage({ team: TEAM, entries: [entry], head }), key) };
}

const swapped = (one: Delivered, in_: Delivered): Delivered => ({ ...one, place: in_.place });
const without = (n: number) => honest.filter((_, i) => i !== n);
const instead = (n: number, message: Delivered) => honest.map((one, i) => (i === n ? swapped(message, one) : one));
const more = (message: Delivered) => [...honest, { ...message, place: honest.length + 1 }];

const ATTACKS: readonly Attack[] = [
  ['nothing', () => ({ messages: honest }), null, 4],
  [
    'sealed with another key of the same number',
    async ([one]) => ({
      messages: instead(0, { ...at(honest, 0), data: await seal(JSON.stringify(one?.entry), await makeTeamKey(1)) }),
    }),
    /altered on its way, or sealed with a key of another team/,
    1,
  ],
  [
    'by a device that had been put out after its first entry',
    () => ({
      messages: honest,
      membership: {
        members: new Map(
          [...buyer.membership.members].map(([id, member]) => [
            id,
            id === buyer.device ? { ...member, ends: 1 } : member,
          ]),
        ),
      },
    }),
    /had been put out of the team before/,
    2,
  ],
  ['replayed', () => ({ messages: more(at(honest, 0)) }), /1 message repeats what came before/, 4],
  ['reordered', () => ({ messages: [2, 0, 1, 3].map((from, i) => swapped(at(honest, from), at(honest, i))) }), null, 4],
  ['withheld', () => ({ messages: without(1) }), /Entry number 2 of device .* is missing.* held back/, 2],
  [
    'altered by a letter',
    () => {
      const { data, ...rest } = at(honest, 1);
      return { messages: instead(1, { ...rest, data: data.slice(0, -2) + (data.endsWith('AA') ? 'BB' : 'AA') }) };
    },
    /altered on its way/,
    2,
  ],
  [
    'forked: another second entry of the same device, well signed',
    async (all) => ({ messages: more(await written({ author: 'somebody else' }, at(all, 1))) }),
    /Here another entry is number 2 of device/,
    4,
  ],
  [
    'put on another device’s subject',
    () => ({ messages: more({ ...at(honest, 0), subject: subjectOf(TEAM, other.device) }) }),
    /written as device .* and put into another place/,
    4,
  ],
  [
    'of a device that nobody let in',
    () => ({ messages: more({ ...at(honest, 0), subject: subjectOf(TEAM, testDevice(9)) }) }),
    /nobody let this device into the team/,
    4,
  ],
  [
    'an entry of 3 MB',
    async (all) => ({
      messages: instead(
        2,
        await written({ happening: { kind: 'huge', text: 'x'.repeat(3_000_000) }, version: 99 }, at(all, 2)),
      ),
    }),
    null,
    4,
  ],
  [
    'by a clock that is hours ahead',
    () => ({ messages: honest.map((one) => ({ ...one, at: instant(one.at - 1_000 * HOUR) })) }),
    /The clock of device .* is 979 hours ahead of the server’s/,
    4,
  ],
  [
    'a happening that only a newer Headroom knows',
    async (all) => ({
      messages: instead(2, await written({ happening: { kind: 'of-tomorrow' }, version: 99 }, at(all, 2))),
    }),
    null,
    4,
  ],
  [
    'a chain rewritten before this computer joined, which another had seen',
    async (all) => {
      const first = at(all, 0);
      const rewritten = await written({ author: 'somebody else' }, first);
      const { device, sequence, hash } = first.entry;
      const seen = signSeen(other.device, { at: first.message.at, heads: [{ device, sequence, hash }] }, other.seed);
      const head = await other.journal.signedEnd(at(all, 3).entry);
      const text = writeMessage({ team: TEAM, entries: [at(all, 3).entry], head, seen });
      return {
        messages: [swapped(rewritten, at(honest, 0)), { ...at(honest, 3), data: await seal(text, key) }],
      };
    },
    /had another entry as number 1 of device .* rewritten/,
    2,
  ],
  [
    'what a device had seen, signed by another',
    async (all) => {
      const { device, sequence, hash } = at(all, 0).entry;
      const seen = signSeen(other.device, { at: at(honest, 0).at, heads: [{ device, sequence, hash }] }, makeSeed());
      const head = await other.journal.signedEnd(at(all, 3).entry);
      const text = writeMessage({ team: TEAM, entries: [at(all, 3).entry], head, seen });
      return { messages: instead(3, { ...at(honest, 3), data: await seal(text, key) }) };
    },
    /does not sign what it had seen/,
    3,
  ],
];

test.each(ATTACKS.map(([what, ...rest], i) => [what, i, ...rest] as const))(
  'messages, %s: found and said, and nothing else is stopped',
  async (what, i, attack, says, entries) => {
    const { messages, membership } = await attack(sent);
    const server = inventedServer();
    server.messages = [...messages];
    const { journal, membership: own } = at(receivers, i);
    const { told, stopped } = await fetchNew(
      { journal, wire: server.wire, membership: { ...own, ...membership } },
      FROM_THE_BEGINNING,
    );
    const here = await Promise.all(
      [buyer, other].map(async ({ device }) => (await journal.endOf(device))?.sequence ?? 0),
    );
    table.push(`${what} | ${told.join(' ') || 'nothing: all of it is taken'} | ${here.reduce((a, b) => a + b)}`);
    expect(stopped).toBeNull();
    if (says === null) expect(told).toEqual([]);
    else expect(told).toEqual(expect.arrayContaining([expect.stringMatching(says)]));
    expect(here.reduce((a, b) => a + b)).toBe(entries);
  },
);

test('a forged word of the roster and an invitation that is used twice or after a day are found and said', async () => {
  const server = inventedServer();
  const keys = { ...newServerSeeds(), team: TEAM, addresses: ['ws://127.0.0.1:1'] };
  let owner: TeamState = await newTeam(keys, 'Cottonwood', { device: testDevice(1), name: 'owner', signKey: null });
  value(await startTeam(owner, server.wire));
  const message = readRosterMessage(at(owner.roster, 0));
  if (message === null) throw new Error('no roster');
  const { signature: _, ...unsigned } = message;
  const forged = writeRosterMessage({ ...unsigned, number: 2, before: message.before }, makeSeed());
  server.messages.push({ subject: rosterSubject(TEAM), data: forged, place: 2, at: at(server.messages, 0).at });
  const { told } = value(await readRoster(owner, server.wire));
  table.push(`a forged word of the roster | ${told.join(' ')} | `);
  expect(told).toEqual([expect.stringMatching(/does not follow what is known/)]);

  const now = at(server.messages, 0).at;
  const asked = async (text: string, digit: number) =>
    join(
      await newJoin(value(readInvitation(text, now, zoneSchema.parse('America/Boise'))), {
        device: testDevice(digit),
        signKey: null,
      }),
      server.wire,
    );
  const invited = async () => {
    if (owner.owner === null) throw new Error('no owner');
    const made = await invite(
      { ...owner, owner: owner.owner },
      'Cottonwood',
      { name: 'manager', role: 'manager' },
      { now, random: testRandom() },
    );
    owner = made.state;
    return made.text;
  };
  const text = await invited();
  expect(value(await asked(text, 2))).toBeNull();
  const twice = await asked(text, 3);
  expect(twice).toMatchObject({ reason: 'used' });
  // The guest asked in time; the server held the asking back until the day was over.
  server.messages = server.messages.map((one) => ({ ...one, at: instant(one.at + 25 * HOUR) }));
  const late = value(await answerGuests(owner, server.wire));
  table.push(`an invitation, used twice | ${twice.ok ? '' : twice.message} | `);
  table.push(`an invitation, used after a day | ${late.told.join(' ')} | `);
  expect([late.letIn, late.told]).toEqual([[], [expect.stringMatching(/used too late/)]]);
  expect(readInvitation(text, instant(now + 25 * HOUR), zoneSchema.parse('America/Boise'))).toMatchObject({
    reason: 'too-late',
  });
});
