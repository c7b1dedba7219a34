import { afterAll, beforeAll, expect, test } from 'vitest';
import type { Refusal } from '../../src/domain/outcome.ts';
import { type Instant, instant } from '../../src/domain/time/instant.ts';
import { zone } from '../../src/domain/time/zone.ts';
import type { KeptTeam } from '../../src/store/connection/kept-team.ts';
import type { Store } from '../../src/store/store.ts';
import { openTeamStore, type TeamStore } from '../../src/store/team/team-store.ts';
import { readInvitation } from '../../src/team/joining/invitation.ts';
import { invite } from '../../src/team/joining/invite.ts';
import { newJoin } from '../../src/team/joining/join.ts';
import { newTeam } from '../../src/team/joining/start-team.ts';
import { isInStep, sayStep } from '../../src/team/step/step.ts';
import { runTeam } from '../../src/team-program/run-team.ts';
import { keptAs, secretOf } from '../../src/team-program/team-secret.ts';
import { enterTeam } from '../../src/team-program/way-in.ts';
import { freshBrowser, openTestStore, testRandom, value } from '../store/open-test-store.ts';
import { type RealServer, realServer } from '../team-server/real-server.ts';

const NOW = (): Instant => instant(Date.now());
const BOISE = zone('America/Boise');

interface Computer {
  readonly store: Store;
  readonly team: TeamStore;
}

let server: RealServer;
beforeAll(async () => {
  freshBrowser();
  server = await realServer([]);
});
afterAll(() => server?.stop());

/** A browser with its own store: its pages, and the program that sends and fetches. */
async function computer(seed: number): Promise<Computer> {
  const name = `team-program-${seed}`;
  return {
    store: await openTestStore({ name, now: NOW, random: testRandom(seed) }),
    team: value(await openTeamStore({ name, now: NOW, random: testRandom(seed), channel: false })),
  };
}

const lotNumbers = async ({ store }: Computer) => (await store.allLots()).map(({ facts }) => facts.lotNumber).sort();
const addLot = async ({ store }: Computer, lotNumber: string) =>
  value(await store.addLots('typed', [{ facts: { lotNumber }, evidence: {} }]));
const once = ({ team }: Computer) =>
  runTeam({ store: team, enter: (kept) => enterTeam(team, kept), now: NOW, how: 'briefly', linger: 0 });

async function start({ team }: Computer): Promise<void> {
  const self = { device: await team.device(), name: 'owner', signKey: await team.publicKey() };
  const state = await newTeam(server.keys, 'Cottonwood Truck & Van', self);
  value(
    await team.keepTeam(keptAs(state, { name: 'Cottonwood Truck & Van', role: 'owner', people: [] }, 'starting', null)),
  );
}

/** The owner's computer makes an invitation, and the other one takes it. */
async function askToJoin(owner: Computer, guest: Computer): Promise<void> {
  const kept = there(await owner.team.team());
  const secret = secretOf(kept);
  if (secret.is !== 'in' || secret.state.owner === null) throw new Error('the owner is not in');
  const state = { ...secret.state, owner: secret.state.owner };
  const invited = await invite(
    state,
    kept.shown.name,
    { name: 'manager', role: 'manager' },
    { now: NOW(), random: testRandom(9) },
  );
  value(await owner.team.keepTeam({ ...keptAs(invited.state, kept.shown, 'in', null) }));
  const invitation = value(readInvitation(invited.text, NOW(), BOISE));
  const pending = await newJoin(invitation, {
    device: await guest.team.device(),
    signKey: await guest.team.publicKey(),
  });
  const asking: KeptTeam = {
    shown: {
      name: invitation.dealership,
      addresses: invitation.addresses,
      state: 'asking',
      role: 'manager',
      people: [],
      invitations: [],
    },
    secret: { is: 'asking', pending },
  };
  value(await guest.team.keepTeam(asking));
}

test('by an invitation a second computer gets everything, what either writes comes to the other, and a cut is said and mended', async () => {
  const [owner, manager] = [await computer(1), await computer(2)];
  await start(owner);
  await addLot(owner, 'A-1');
  expect(sayStep(there(await owner.store.team()), BOISE, NOW())).toMatch(/^1 entry not sent since/);
  await once(owner);
  expect(there(await owner.store.team()).shown).toMatchObject({ state: 'in', role: 'owner' });

  await addLot(manager, 'B-1');
  await askToJoin(owner, manager);
  // Nobody has let it in yet: that is said, and nothing of it is lost.
  await once(manager);
  expect(there(await manager.store.team()).stopped).toMatch(/^Waiting to be let in/);
  await once(owner);
  await once(manager);
  await once(owner);
  for (const one of [owner, manager]) {
    expect(await lotNumbers(one)).toEqual(['A-1', 'B-1']);
    const standing = there(await one.store.team());
    expect(standing).toMatchObject({ notSent: 0, stopped: null });
    expect(isInStep(standing, NOW())).toBe(true);
    expect(standing.shown.people.map(({ name, role, isOut }) => [name, role, isOut])).toEqual([
      ['owner', 'owner', false],
      ['manager', 'manager', false],
    ]);
  }
  expect(there(await owner.store.team()).shown.invitations).toEqual([]);
  expect((await manager.store.author()).name).toBe('manager');

  await server.kill(0);
  await addLot(manager, 'B-2');
  await once(manager);
  const cut = there(await manager.store.team());
  expect(cut).toMatchObject({ notSent: 1, stopped: expect.stringMatching(/did not answer/) });
  expect(isInStep(cut, NOW())).toBe(false);
  await server.start(0);
  const stop = new AbortController();
  const live = runTeam({
    store: manager.team,
    enter: (kept) => enterTeam(manager.team, kept),
    now: NOW,
    how: 'while open',
    stop: stop.signal,
  });
  await expect.poll(async () => (await manager.store.team())?.notSent, { timeout: 10_000 }).toBe(0);
  stop.abort();
  await live;
  await once(owner);
  expect(await lotNumbers(owner)).toEqual(['A-1', 'B-1', 'B-2']);
});

test('leaving forgets the keys and how far it was read, and keeps every entry', async () => {
  const buyer = await computer(4);
  await start(buyer);
  await addLot(buyer, 'A-1');
  value(await buyer.team.keepTeam(null));
  expect([await buyer.store.team(), await buyer.team.team()]).toEqual([null, null]);
  expect(await lotNumbers(buyer)).toEqual(['A-1']);
});

function there<Value>(found: Value | null): Value {
  if (found === null) throw new Error('this browser is in no team');
  return found;
}

test('while the user lets nothing be sent, the server is not asked, it is said, and what was written goes once he does', async () => {
  // The owner’s browser again, some time later.
  const alone = await computer(1);
  await addLot(alone, 'not yet');
  let entered = 0;
  const meet = (refused: Refusal | null) =>
    runTeam({
      store: alone.team,
      enter: (kept) => {
        entered += 1;
        return enterTeam(alone.team, kept);
      },
      mayNotSend: async () => refused,
      now: NOW,
      how: 'briefly',
      linger: 0,
    });
  await meet({ reason: 'no-consent', message: 'The user said no.' });
  expect([entered, await alone.store.team()]).toMatchObject([0, { notSent: 1, stopped: 'The user said no.' }]);
  await meet(null);
  expect([entered, await alone.store.team()]).toMatchObject([1, { notSent: 0, stopped: null }]);
});
