import { jetstreamManager } from '@nats-io/jetstream';
import fc from 'fast-check';
import type { DeviceId } from '../../src/journal/ids.ts';
import type { Store } from '../../src/store/store.ts';
import { streamOf } from '../../src/team/message/subjects.ts';
import type { Wire } from '../../src/team/wire/wire.ts';
import { at } from '../folds/journal-arbitrary.ts';
import { stepsFor, takeStep, threeStores } from '../store/store-acts.ts';
import { type Computer, inventedTeam, TEAM } from '../team/invented-team.ts';
import { type CuttingProxy, cuttingProxy } from './cutting-proxy.ts';
import { type RealServer, realServer } from './real-server.ts';

export const NAMES = ['buyer', 'manager', 'bookkeeper'];
const HOUR = 3_600_000;
const START = Date.UTC(2026, 3, 10, 15);

/** What happened in a campaign, to be printed. */
export type Tally = Record<
  'acts' | 'meetings' | 'offline' | 'cut before' | 'cut after' | 'killed' | 'put back' | 'full' | 'refused',
  number
>;

export interface Campaign {
  readonly stores: readonly Store[];
  readonly team: readonly Computer[];
  readonly tally: Tally;
  stop(): Promise<void>;
}

/** Chance that is the same for the same seed (mulberry32, public domain). */
function chances(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4_294_967_296;
  };
}

/**
 * Three computers, whose clocks are hours apart, do random acts and come online at random, while the connection is cut, the
 * server is killed, put back to an older copy, and full. In the end all of them meet until nothing is left to send.
 */
export async function campaign(acts: number, seed: number): Promise<Campaign> {
  const chance = chances(seed);
  const stores = await threeStores(NAMES, [START, START + 5 * HOUR, START - 3 * HOUR]);
  const team = await inventedTeam(NAMES);
  const server = await realServer(team.map(({ device }) => device));
  const proxy = await cuttingProxy(at(server.addresses, 0));
  const tally: Tally = {
    acts: 0,
    meetings: 0,
    offline: 0,
    'cut before': 0,
    'cut after': 0,
    killed: 0,
    'put back': 0,
    full: 0,
    refused: 0,
  };
  const way = new Ways(server, proxy);
  const steps = fc.sample(stepsFor(20), { seed, numRuns: Math.ceil(acts / 5) }).flat();
  let copied = false;
  for (const step of steps) {
    if (tally.acts === acts) break;
    if (step[1].do === 'merge') continue;
    await takeStep(stores, step);
    tally.acts += 1;
    if (chance() < 0.03) {
      await server.kill(0);
      way.forget();
      tally.killed += 1;
      if (copied && chance() < 0.4) {
        server.copyBack(0);
        tally['put back'] += 1;
      } else if (chance() < 0.5) {
        server.copyAside(0);
        copied = true;
      }
      await server.start(0);
    }
    if (chance() < 0.02) {
      await setRoom(server, 200);
      tally.full += 1;
    } else if (chance() < 0.1) await setRoom(server, null);
    for (const one of team)
      if (chance() < 0.4) await meet(one, { way, proxy, tally, chance });
      else tally.offline += 1;
  }
  await setRoom(server, null);
  proxy.cutAt = null;
  // Who fetches first may have to wait for what a later one sends again.
  for (let round = 0; round < 3; round++)
    for (const one of team) await meet(one, { way, proxy, tally, chance: () => 1 });
  return {
    stores,
    team,
    tally,
    async stop() {
      way.forget();
      await proxy.stop();
      server.stop();
      for (const one of [...stores, ...team.map(({ journal }) => journal)]) one.close();
    },
  };
}

/** Connections that stay open until they break. */
class Ways {
  private readonly open = new Map<DeviceId, Wire>();
  private readonly server: RealServer;
  private readonly proxy: CuttingProxy;

  constructor(server: RealServer, proxy: CuttingProxy) {
    this.server = server;
    this.proxy = proxy;
  }

  async of(device: DeviceId): Promise<Wire> {
    const wire = this.open.get(device) ?? (await this.server.connect(device, this.proxy.address));
    this.open.set(device, wire);
    return wire;
  }

  forget(device?: DeviceId): void {
    for (const [of, wire] of this.open)
      if (device === undefined || of === device) {
        this.open.delete(of);
        wire.close().catch(() => undefined);
      }
  }
}

interface Meeting {
  readonly way: Ways;
  readonly proxy: CuttingProxy;
  readonly tally: Tally;
  readonly chance: () => number;
}

async function meet(one: Computer, { way, proxy, tally, chance }: Meeting): Promise<void> {
  tally.meetings += 1;
  const wire = await way.of(one.device);
  const luck = chance();
  if (luck < 0.1) {
    proxy.cutAt = luck < 0.05 ? 'the message' : 'the answer';
    tally[luck < 0.05 ? 'cut before' : 'cut after'] += 1;
  }
  const fetched = await one.fetch(wire);
  const sent = fetched.stopped ?? (await one.send(wire)).stopped;
  proxy.cutAt = null;
  if (sent === null) return;
  tally.refused += 1;
  // The next time it begins with a connection of its own.
  way.forget(one.device);
}

async function setRoom(server: RealServer, more: number | null): Promise<void> {
  const connection = await server.keeper();
  const { streams } = await jetstreamManager(connection);
  const { state } = await streams.info(streamOf(TEAM));
  await streams.update(streamOf(TEAM), { max_bytes: more === null ? -1 : state.bytes + more });
  await connection.close();
}
