import { afterAll, beforeAll, expect, test } from 'vitest';
import { instant } from '../../src/domain/time/instant.ts';
import { zoneSchema } from '../../src/domain/time/zone.ts';
import { answerGuests } from '../../src/team/joining/answer.ts';
import { readInvitation } from '../../src/team/joining/invitation.ts';
import { invite } from '../../src/team/joining/invite.ts';
import { join, newJoin } from '../../src/team/joining/join.ts';
import { keepRights, putOut } from '../../src/team/joining/put-out.ts';
import { newTeam, startTeam } from '../../src/team/joining/start-team.ts';
import { subjectOf } from '../../src/team/message/subjects.ts';
import { readRoster } from '../../src/team/roster/read-roster.ts';
import type { Role } from '../../src/team/roster/roster-device.ts';
import type { TeamState } from '../../src/team/roster/team-state.ts';
import { connectToClaims } from '../../src/team/wire/nats-claims.ts';
import type { Wire } from '../../src/team/wire/wire.ts';
import { testRandom, value } from '../store/open-test-store.ts';
import { TEAM } from '../team/invented-team.ts';
import { testDevice } from '../team/test-device.ts';
import { type RealServer, realServer } from './real-server.ts';

const ZONE = zoneSchema.parse('America/Boise');
const now = () => instant(Date.now());
const random = testRandom();
let server: RealServer;
let owner: TeamState;
let wire: Wire;
const open: Wire[] = [];

const enter = async (state: TeamState): Promise<Wire> => {
  const one = value(await server.enter(state.device, state.credentials));
  open.push(one);
  return one;
};

beforeAll(async () => {
  server = await realServer([]);
  owner = await newTeam(server.keys, 'Cottonwood', { device: testDevice(1), name: 'owner', signKey: null });
  wire = await enter(owner);
  value(await startTeam(owner, wire));
});
afterAll(async () => {
  await Promise.all(open.map((one) => one.close().catch(() => undefined)));
  server.stop();
});

const owned = () => owner as TeamState & { owner: NonNullable<TeamState['owner']> };

async function invited(name: string, role: Role = 'manager'): Promise<string> {
  const { state, text } = await invite(owned(), 'Cottonwood', { name, role }, { now: now(), random });
  owner = state;
  return text;
}

async function asGuest(text: string, digit: number) {
  const invitation = value(readInvitation(text, now(), ZONE));
  const { id, seed, word } = invitation;
  const guest = value(await server.enter(id, { seed, word }));
  open.push(guest);
  return { guest, pending: await newJoin(invitation, { device: testDevice(digit), signKey: null }) };
}

async function answered(): Promise<readonly string[]> {
  const done = value(await answerGuests(owner, wire));
  owner = done.state;
  return done.letIn.map(({ name }) => name);
}

async function joined(name: string, digit: number, role?: Role): Promise<TeamState> {
  const { guest, pending } = await asGuest(await invited(name, role), digit);
  expect(value(await join(pending, guest))).toBeNull();
  expect(await answered()).toEqual([name]);
  const state = value(await join(pending, guest));
  if (state === null) throw new Error('not answered');
  return value(await readRoster(state, await enter(state))).state;
}

test('an invitation lets one computer in, which knows the team then, and no second one', async () => {
  const text = await invited('manager');
  expect(text.length).toBeLessThan(2_900);
  const { guest, pending } = await asGuest(` ${text.slice(0, 40)}\n${text.slice(40)} `, 2);
  expect(value(await join(pending, guest))).toBeNull();
  const late = await asGuest(text, 3);
  expect(await join(late.pending, late.guest)).toMatchObject({ reason: 'used' });
  expect(await answered()).toEqual(['manager']);
  expect(await answered()).toEqual([]);
  const state = value(await join(pending, guest));
  if (state === null) throw new Error('not answered');
  const { open: roster, told } = value(await readRoster(state, await enter(state)));
  expect([...roster.roster.members.values()].map(({ name, role }) => [name, role])).toEqual([
    ['owner', 'owner'],
    ['manager', 'manager'],
  ]);
  expect(told).toEqual([]);
  // A guest can do no more than ask: neither write as a device, nor read on.
  expect(await guest.publish({ subject: subjectOf(TEAM, testDevice(1)), data: 'x', after: 0 })).toMatchObject({
    reason: 'not-allowed',
  });
});

test('a computer that was put out can write and read nothing more, and does not get the key that holds from there on', async () => {
  const bookkeeper = await joined('bookkeeper', 4);
  const buyer = await joined('buyer', 5);
  const [theirs, others] = [await enter(bookkeeper), await enter(buyer)];
  value(await theirs.publish({ subject: subjectOf(TEAM, bookkeeper.device), data: 'before', after: 0 }));

  owner = value(await putOut(owner, wire, bookkeeper.device, 0));
  const claims = value(await connectToClaims(server.keys));
  expect(await keepRights(owner, claims)).toEqual({ ok: true, value: 'told' });
  expect(await keepRights(owner, claims)).toEqual({ ok: true, value: 'kept' });
  await claims.close();

  const subject = subjectOf(TEAM, bookkeeper.device);
  expect((await theirs.lastOn(subject)).ok).toBe(false);
  expect(await server.enter(bookkeeper.device, bookkeeper.credentials)).toMatchObject({
    ok: false,
    reason: 'not-allowed',
  });
  const after = value(await readRoster(buyer, others));
  expect([after.state.keys[0]?.number, owner.keys[0]?.number]).toEqual([2, 2]);
  expect(after.open.roster.members.get(bookkeeper.device)).toMatchObject({ ends: 0 });
  // What the server could still hand it: the roster, in which the new key is sealed for the others.
  const { open: seen, state: known, told } = value(await readRoster(bookkeeper, others));
  expect(known.keys.map(({ number }) => number)).toEqual([1]);
  expect(seen.roster.members.get(bookkeeper.device)).toMatchObject({ ends: null });
  expect(told).toEqual([expect.stringMatching(/can’t be opened/)]);
});

test('who was put out comes back by a new invitation, with keys of its own', async () => {
  const again = await joined('bookkeeper', 4);
  expect(again.keys.map(({ number }) => number)).toEqual([2, 1]);
  expect((await (await enter(again)).publish({ subject: subjectOf(TEAM, again.device), data: 'x', after: 0 })).ok).toBe(
    false,
  );
});

test('only an owner invites and puts out, and an owner is not put out', async () => {
  const second = await joined('second', 6);
  expect(second.owner).toBeNull();
  expect(await putOut(second, wire, testDevice(1), 0)).toMatchObject({ reason: 'not-owner' });
  expect(await putOut(owner, wire, testDevice(1), 0)).toMatchObject({ reason: 'owner' });
  expect(await putOut(owner, wire, testDevice(9), 0)).toMatchObject({ reason: 'no-such-device' });
});

test('a second owner puts out as the first does', async () => {
  const [second, leaving] = [await joined('second owner', 7, 'owner'), await joined('leaving', 8)];
  const theirs = await enter(second);
  const { state } = value(await readRoster(second, theirs));
  const after = value(await putOut(state, theirs, leaving.device, 0));
  owner = value(await readRoster(owner, wire)).state;
  expect(owner.keys[0]?.number).toBe(after.keys[0]?.number);
  expect(owner.roster).toEqual(after.roster);
});

test('an invitation of yesterday is refused by who reads it and by the server', async () => {
  const yesterday = instant(Date.now() - 25 * 3_600_000);
  const old = await invite(owned(), 'Cottonwood', { name: 'late', role: 'buyer' }, { now: yesterday, random });
  expect(readInvitation(old.text, now(), ZONE)).toMatchObject({ reason: 'too-late' });
  const { id, seed, word } = value(readInvitation(old.text, yesterday, ZONE));
  expect(await server.enter(id, { seed, word })).toMatchObject({ reason: 'not-allowed' });
});
