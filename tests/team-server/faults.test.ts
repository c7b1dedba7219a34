import { jetstreamManager } from '@nats-io/jetstream';
import { afterEach, expect, test } from 'vitest';
import { chainHeads } from '../../src/journal/chain-head.ts';
import type { Store } from '../../src/store/store.ts';
import { everySubject, streamOf } from '../../src/team/message/subjects.ts';
import type { Wire } from '../../src/team/wire/wire.ts';
import { at } from '../folds/journal-arbitrary.ts';
import { value } from '../store/open-test-store.ts';
import { storedEntries } from '../store/raw-database.ts';
import { threeStores } from '../store/store-acts.ts';
import { type Computer, inventedTeam, TEAM } from '../team/invented-team.ts';
import { cuttingProxy } from './cutting-proxy.ts';
import { patiently, type RealServer, realServer } from './real-server.ts';

const NAMES = ['buyer', 'manager', 'bookkeeper'];
let stores: readonly Store[] = [];
let team: readonly Computer[] = [];
let server: RealServer | undefined;

async function begin(servers: 1 | 3 = 1): Promise<RealServer> {
  stores = await threeStores(NAMES);
  team = await inventedTeam(NAMES);
  server = await realServer(
    team.map(({ device }) => device),
    servers,
  );
  return server;
}

afterEach(() => {
  server?.stop();
  for (const one of [...stores, ...team.map(({ journal }) => journal)]) one.close();
});

const write = async (who: number, notes: string): Promise<void> => {
  value(await at(stores, who).addLots('typed', [{ facts: { notes } }]));
};

/** Fetches and sends until nothing is left to do, over connections of its own. */
async function meet(one: RealServer, who: number): Promise<readonly string[]> {
  const wire = await one.connect(at(team, who).device);
  const { told, stopped } = await at(team, who).fetch(wire);
  expect(stopped).toBeNull();
  expect((await at(team, who).send(wire)).stopped).toBeNull();
  await wire.close();
  return told;
}

async function sendAll(one: RealServer): Promise<void> {
  const wire = await one.connect(at(team, 0).device);
  const { stopped } = await at(team, 0).send(wire);
  await wire.close();
  if (stopped !== null) throw new Error(stopped.message);
}

/** Where each chain ends in a store: the same everywhere when everybody has everything. */
const ends = async (name: string): Promise<unknown> => chainHeads(await storedEntries(name));

async function stored(one: RealServer): Promise<number> {
  const wire = await one.connect(at(team, 2).device);
  const messages = value(await wire.from(1, everySubject(TEAM), 1000));
  await wire.close();
  return messages.length;
}

test('a connection that is cut at every message, before it or before its answer, loses and doubles nothing', async () => {
  const one = await begin();
  const proxy = await cuttingProxy(at(one.addresses, 0));
  const buyer = at(team, 0);
  for (let i = 0; i < 4; i++) {
    await write(0, `car ${i}`);
    const wire = await one.connect(buyer.device, proxy.address);
    const cutting: Wire = {
      ...wire,
      publish(message) {
        proxy.cutAt = i % 2 === 0 ? 'the message' : 'the answer';
        return wire.publish(message);
      },
    };
    expect((await buyer.send(cutting)).stopped).toMatchObject({ reason: 'no-connection' });
    await wire.close();
    await meet(one, 0);
  }
  expect(await stored(one)).toBe(4);
  await meet(one, 1);
  expect(await ends('manager')).toEqual(await ends('buyer'));
  await proxy.stop();
});

test('a server that was put back to an older copy gets again what it lost, and everybody has everything', async () => {
  const one = await begin();
  await write(0, 'before');
  for (const who of [0, 1]) await meet(one, who);
  await one.kill(0);
  one.copyAside(0);
  await one.start(0);
  await write(0, 'lost, by the buyer');
  await write(1, 'lost, by the manager');
  for (const who of [0, 1, 0]) await meet(one, who);
  await one.kill(0);
  one.copyBack(0);
  await one.start(0);

  expect(await stored(one)).toBe(1);
  await write(1, 'after');
  const told = await meet(one, 0);
  expect(told).toEqual([expect.stringMatching(/restored from an older copy/)]);
  for (const who of [1, 0, 2]) await meet(one, who);
  expect(await stored(one)).toBe(3);
  for (const name of ['manager', 'bookkeeper']) expect(await ends(name)).toEqual(await ends('buyer'));
});

test('a server that is full says so, and takes what was not sent once it has room again', async () => {
  const one = await begin();
  await write(0, 'before');
  await meet(one, 0);
  const connection = await one.keeper();
  const { streams } = await jetstreamManager(connection);
  const roomFor = (max_bytes: number) => streams.update(streamOf(TEAM), { max_bytes });
  await roomFor((await streams.info(streamOf(TEAM))).state.bytes + 100);
  await write(0, 'no room for it');
  const wire = await one.connect(at(team, 0).device);
  expect((await at(team, 0).send(wire)).stopped).toMatchObject({ reason: 'full' });
  await wire.close();
  expect(await stored(one)).toBe(1);
  await roomFor(-1);
  await connection.close();
  for (const who of [0, 1]) await meet(one, who);
  expect(await stored(one)).toBe(2);
  expect(await ends('manager')).toEqual(await ends('buyer'));
});

test('three servers, the leader killed in the middle of writing: every message once, in order', async () => {
  const one = await begin(3);
  const connection = await one.keeper();
  const { cluster } = await (await jetstreamManager(connection)).streams.info(streamOf(TEAM));
  await connection.close();
  for (let i = 0; i < 6; i++) {
    await write(0, `car ${i}`);
    if (i === 2) await one.kill(one.names.indexOf(cluster?.leader ?? ''));
    await patiently(() => sendAll(one));
  }
  const messages = await patiently(() => stored(one));
  expect(messages).toBe(6);
  await patiently(() => meet(one, 1));
  expect(await ends('manager')).toEqual(await ends('buyer'));
});
