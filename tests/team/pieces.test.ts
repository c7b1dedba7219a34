import { beforeEach, describe, expect, test } from 'vitest';
import { fileHash } from '../../src/store/attachments/file-hash.ts';
import type { Store } from '../../src/store/store.ts';
import { fetchFile } from '../../src/team/files/fetch-file.ts';
import { sendFiles } from '../../src/team/files/send-files.ts';
import { at } from '../folds/journal-arbitrary.ts';
import { testRandom, value } from '../store/open-test-store.ts';
import { threeStores } from '../store/store-acts.ts';
import { type InventedServer, inventedServer } from './invented-server.ts';
import { type Computer, inventedTeam, TEAM } from './invented-team.ts';

let stores: readonly Store[];
let buyer: Computer;
let manager: Computer;
let server: InventedServer;

beforeEach(async () => {
  const names = ['buyer', 'manager'];
  stores = await threeStores(names);
  const computers = await inventedTeam(names);
  [buyer, manager] = [at(computers, 0), at(computers, 1)];
  server = inventedServer();
});

const write = async (...notes: string[]) =>
  value(
    await at(stores, 0).addLots(
      'typed',
      notes.map((one) => ({ facts: { notes: one } })),
      { batchSize: 1 },
    ),
  );
const here = async () => (await at(stores, 1).allLots()).map(({ facts }) => facts.notes?.length);
const allSent = async () => expect((await buyer.send(server.wire)).stopped).toBeNull();
const allFetched = async () => expect(await manager.fetch(server.wire)).toMatchObject({ stopped: null, told: [] });

/** Text in which every second letter takes two of its parts here and four bytes on its way. */
const LONG = '🚚x'.repeat(900);

describe('an entry that is larger than the server takes', () => {
  beforeEach(() => {
    server.most = 20_000;
  });

  test('goes in pieces, and nothing behind it is held up', async () => {
    const large = Array.from({ length: 20 }, (_, i) => ({ facts: { notes: `${i}${LONG}` } }));
    await write('before');
    value(await at(stores, 0).addLots('typed', large));
    await write('after');
    await allSent();
    expect(server.messages.length).toBeGreaterThan(5);
    await allFetched();
    expect(await here()).toEqual([6, ...large.map(({ facts }) => facts.notes.length), 5]);
  });

  test('is taken whole in whatever order its pieces come, and waits for those that have not come', async () => {
    value(
      await at(stores, 0).addLots(
        'typed',
        [LONG, LONG, LONG, LONG].map((notes) => ({ facts: { notes } })),
      ),
    );
    await allSent();
    const all = [...server.messages];
    expect(all.length).toBeGreaterThan(2);
    server.messages = all.slice(0, -1);
    const { told, position } = await manager.fetch(server.wire);
    expect(told).toEqual([expect.stringMatching(/^Message 1 of device .* pieces, of which/)]);
    expect([...position.waiting]).toEqual([[buyer.device, 1]]);
    server.messages = all.map(({ place }, i) => ({ ...at(all, all.length - 1 - i), place }));
    await manager.fetch(server.wire);
    expect(await here()).toEqual([LONG.length, LONG.length, LONG.length, LONG.length]);
    expect((await manager.fetch(server.wire)).position.waiting.size).toBe(0);
  });

  test('goes on after a cut with the piece that has not come', async () => {
    value(
      await at(stores, 0).addLots(
        'typed',
        [LONG, LONG, LONG, LONG].map((notes) => ({ facts: { notes } })),
      ),
    );
    await allSent();
    const [whole, first] = [server.messages.length, at(server.messages, 0).data];
    server.messages = [];
    server.answersLeft = 2;
    expect((await buyer.send(server.wire)).stopped).toMatchObject({ reason: 'no-connection' });
    expect(server.messages.length).toBe(2);
    expect(first).not.toBe(at(server.messages, 0).data);
    server.answersLeft = Number.POSITIVE_INFINITY;
    await write('after');
    await allSent();
    expect(server.messages.length).toBe(whole + 1);
    await allFetched();
    expect(await here()).toHaveLength(5);
  });

  test('that no piece of any size helps is said, with what to do', async () => {
    server.most = 1_000;
    await write(LONG);
    expect((await buyer.send(server.wire)).stopped).toMatchObject({ reason: 'too-large' });
  });
});

describe('an attached file', () => {
  const bytes = new Uint8Array(testRandom(7)(60_000));
  let hash: Awaited<ReturnType<typeof attach>>;

  async function attach() {
    const { lots } = await write('with a file');
    const file = { bytes, name: 'report.pdf', mediaType: 'application/pdf', about: 'condition-report' as const };
    value(await at(stores, 0).keepAttachment(at(lots, 0), file));
    const [named] = (await buyer.journal.ownFilesAfter(0))?.hashes ?? [];
    if (named === undefined) throw new Error('no file is named');
    return named;
  }

  const way = () => ({ wire: server.wire, team: TEAM, keys: buyer.keys });
  const sent = () => sendFiles(buyer.journal, way());
  const fetched = () => fetchFile({ ...way(), shelf: manager.journal, hash });

  beforeEach(async () => {
    server.most = 20_000;
    hash = await attach();
  });

  test('goes in pieces under a name that says nothing of it, and is the very same at the other end', async () => {
    expect(await fetched()).toMatchObject({ reason: 'not-there' });
    expect(await sent()).toBeNull();
    expect(server.messages.length).toBeGreaterThan(4);
    expect(JSON.stringify(server.messages)).not.toContain(hash);
    expect(await fetched()).toEqual({ ok: true, value: null });
    const blob = await at(stores, 1).readAttachment(hash);
    expect(blob?.type).toBe('application/pdf');
    expect(await fileHash(new Uint8Array((await blob?.arrayBuffer()) ?? new ArrayBuffer(0)))).toBe(hash);
    const count = server.messages.length;
    expect(await sent()).toBeNull();
    expect(server.messages.length).toBe(count);
  });

  test('goes on after a cut where it was, on its way there and on its way here', async () => {
    server.answersLeft = 2;
    expect(await sent()).toMatchObject({ reason: 'no-connection' });
    expect(server.messages.length).toBe(2);
    expect(await fetched()).toMatchObject({ reason: 'no-connection' });
    server.answersLeft = Number.POSITIVE_INFINITY;
    expect(await fetched()).toMatchObject({ reason: 'not-there', message: expect.stringMatching(/Only a part/) });
    expect(await manager.journal.piecesOf(hash)).toMatchObject({ here: 2 });
    expect(await sent()).toBeNull();
    const asked: number[] = [];
    const counting = {
      ...server.wire,
      from(...query: Parameters<typeof server.wire.from>) {
        asked.push(query[0]);
        return server.wire.from(...query);
      },
    };
    expect(await fetchFile({ ...way(), wire: counting, shelf: manager.journal, hash })).toMatchObject({ ok: true });
    expect(asked).toEqual([3]);
  });

  test('is left out when a piece of it is another, and taken once it was sent again', async () => {
    expect(await sent()).toBeNull();
    const good = [...server.messages];
    server.messages = good.map((one, i) => (i === 1 ? { ...one, data: at(good, 2).data } : one));
    expect(await fetched()).toMatchObject({ ok: false });
    server.messages = [...server.messages, ...good.map((one, i) => ({ ...one, place: 100 + i }))];
    expect(await fetched()).toMatchObject({ ok: true });
  });

  test('is sent again to a server that was restored from an older copy', async () => {
    expect(await sent()).toBeNull();
    server.messages = [];
    expect(await sent()).toBeNull();
    expect(await fetched()).toMatchObject({ ok: true });
  });
});
