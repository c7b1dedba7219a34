import type { LotId } from '../../../src/domain/lot/lot.ts';
import { instant } from '../../../src/domain/time/instant.ts';
import type { DeviceId } from '../../../src/journal/ids.ts';
import type { Change } from '../../../src/journal/make-entry.ts';
import { subjectOfLot } from '../../../src/journal/subject.ts';
import { readBackup } from '../../../src/store/backup/read-backup.ts';
import { openStore } from '../../../src/store/open-store.ts';
import { openTeamStore, type TeamStore } from '../../../src/store/team/team-store.ts';
import { fetchNew } from '../../../src/team/incoming/fetch.ts';
import { FROM_THE_BEGINNING, type Position } from '../../../src/team/incoming/fetching.ts';
import type { Member } from '../../../src/team/incoming/membership.ts';
import { keyOfSeed, makeSeed } from '../../../src/team/keys/user-key.ts';
import { teamIdSchema } from '../../../src/team/message/team-id.ts';
import { send } from '../../../src/team/outgoing/send.ts';
import { makeTeamKey, type TeamKey } from '../../../src/team/seal/seal.ts';
import { inventedServer } from '../../team/invented-server.ts';

const TEAM = teamIdSchema.parse('TEAM000000000001');
const WRITERS = ['buyer', 'manager', 'bookkeeper'];
/** Entries that somebody writes before the next one does. */
const TURN = 60;
/** Of a hundred entries: lots that come in, and entries that are undone. */
const LOTS = 12;
const UNDONE = 2;

const options = (name: string) => ({
  name,
  now: () => instant(Date.now()),
  random: (bytes: number) => crypto.getRandomValues(new Uint8Array(bytes)),
  channel: false,
});

interface Team {
  readonly server: ReturnType<typeof inventedServer>;
  readonly members: Map<DeviceId, Member>;
  key: TeamKey | null;
  backup: Blob | null;
}
const team: Team = {
  // A day ahead: no computer's clock is ahead of it, however long this takes.
  server: inventedServer(Date.now() + 86_400_000),
  members: new Map(),
  key: null,
  backup: null,
};

/** What the benchmark of a team does in a page of the extension without any screen. */
const program = {
  /** Three computers write so many entries about the same lots, in turns, and send them. Gives back how many messages they are. */
  async write(count: number): Promise<number> {
    team.server.messages = [];
    team.members.clear();
    const key = await makeTeamKey(1);
    team.key = key;
    const computers = await Promise.all(
      WRITERS.map(async (name) => {
        const store = good(await openStore(options(name)));
        const journal = good(await openTeamStore(options(name)));
        const seed = makeSeed();
        team.members.set(await journal.device(), {
          publicKey: await journal.publicKey(),
          userKey: keyOfSeed(seed).getPublicKey(),
          ends: null,
        });
        return { store, journal, seed, position: FROM_THE_BEGINNING };
      }),
    );
    const lots: LotId[] = [];
    for (let written = 0, turn = 0; written < count; turn++) {
      const one = computers[turn % computers.length];
      if (one === undefined) break;
      one.position = (await fetch(one.journal, one.position)).position;
      const born = turn % 4 === 0 ? good(await one.store.addLots('file', manyLots(LOTS * 4))).lots : [];
      lots.push(...born);
      const most = Math.min(TURN, count - written - (born.length > 0 ? 1 : 0));
      const entries = good(await one.store.append(Array.from({ length: Math.max(1, most) }, () => change(lots))));
      const undone = entries.slice(0, Math.floor((UNDONE * TURN) / 100)).map(({ id }) => id);
      if (undone.length > 0 && written + most + 2 < count) good(await one.store.undo(...undone));
      written += entries.length + undone.length + (born.length > 0 ? 1 : 0);
      await send({ chain: one.journal, wire: team.server.wire, team: TEAM, keys: [key], seed: one.seed });
    }
    for (const one of computers) await fetch(one.journal, one.position);
    const [first] = computers;
    if (first === undefined) throw new Error('nobody wrote');
    team.backup = (await first.store.backup()).blob;
    for (const { store, journal } of computers) {
      store.close();
      journal.close();
    }
    return team.server.messages.length;
  },

  /** A fourth computer fetches all of it: milliseconds, the longest task in them, and how many entries there are. */
  async join(name: string): Promise<{ spent: number; longest: number; entries: number }> {
    const journal = good(await openTeamStore(options(name)));
    const tasks: number[] = [];
    const observer = new PerformanceObserver((list) => tasks.push(...list.getEntries().map((one) => one.duration)));
    observer.observe({ entryTypes: ['longtask'] });
    const started = performance.now();
    const { added, told, stopped } = await fetch(journal, FROM_THE_BEGINNING);
    const spent = performance.now() - started;
    await new Promise((done) => setTimeout(done, 50));
    observer.disconnect();
    journal.close();
    if (stopped !== null || told.length > 0) throw new Error(stopped?.message ?? told.join(' '));
    return { spent, longest: Math.max(0, ...tasks), entries: added };
  },

  /** The rival: the same journal, read out of its backup and restored. */
  async restore(name: string): Promise<number> {
    const store = good(await openStore(options(name)));
    const started = performance.now();
    if (team.backup === null) throw new Error('no backup');
    const backup = good(await readBackup(team.backup));
    good(await store.restore(backup, { mode: 'merge' }));
    const spent = performance.now() - started;
    store.close();
    return spent;
  },

  /** Whether two stores hold the same lots. */
  async same(one: string, other: string): Promise<boolean> {
    const lots = async (name: string) => {
      const store = good(await openStore(options(name)));
      const all = JSON.stringify(await store.allLots());
      store.close();
      return all;
    };
    return (await lots(one)) === (await lots(other));
  },

  remove(name: string): Promise<void> {
    return new Promise((resolve, reject) => {
      const request = indexedDB.deleteDatabase(name);
      request.onsuccess = () => resolve();
      request.onerror = () => reject(request.error);
    });
  },
};

async function fetch(journal: TeamStore, position: Position) {
  const { key, members, server } = team;
  if (key === null) throw new Error('no key');
  return fetchNew(
    { journal, wire: server.wire, membership: { team: TEAM, keys: new Map([[1, key.key]]), members } },
    position,
  );
}

const manyLots = (count: number) =>
  Array.from({ length: count }, (_, i) => ({
    facts: { make: 'Dogwood', model: 'Half-ton crew', year: 2021, miles: 40_000 + i, notes: 'one owner, no smoke' },
  }));

function change(lots: readonly LotId[]): Change {
  const id = lots[Math.floor(Math.random() * lots.length)];
  if (id === undefined) throw new Error('no lot');
  const miles = Math.floor(Math.random() * 100_000);
  return {
    subject: subjectOfLot(id),
    happening: { kind: 'lot-changed', set: { miles, notes: `seen at ${miles}` }, clear: [], evidence: {} },
  };
}

function good<Value>(outcome: { ok: true; value: Value } | { ok: false; message: string }): Value {
  if (!outcome.ok) throw new Error(outcome.message);
  return outcome.value;
}

declare global {
  interface Window {
    teamProgram: typeof program;
  }
}
window.teamProgram = program;
