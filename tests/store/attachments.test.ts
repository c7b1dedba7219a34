import { createHash } from 'node:crypto';
import { beforeEach, expect, test } from 'vitest';
import type { LotId } from '../../src/domain/lot/lot.ts';
import type { Store } from '../../src/store/store.ts';
import { at } from '../folds/journal-arbitrary.ts';
import { failWrite } from './fault.ts';
import { freshBrowser, openTestStore, value } from './open-test-store.ts';
import { dump } from './raw-database.ts';

beforeEach(freshBrowser);

const PAPER = { bytes: new Blob(['sold as seen'], { type: 'text/plain' }), name: 'terms.txt', about: 'other' } as const;
const PAPER_HASH = createHash('sha256').update('sold as seen').digest('hex');

async function withLot(options: Parameters<typeof openTestStore>[0] = {}): Promise<{ store: Store; lot: LotId }> {
  const store = await openTestStore(options);
  const { lots } = value(await store.addLots('typed', [{ facts: { make: 'Alder' } }, { facts: { make: 'Birch' } }]));
  return { store, lot: at(lots, 0) };
}

test('a kept file is there by the SHA-256 of its bytes, and the lot names it', async () => {
  const { store, lot } = await withLot();
  const kept = value(await store.keepAttachment(lot, { ...PAPER, note: 'from the desk' }));
  expect(kept).toMatchObject({ hash: PAPER_HASH, warning: null });
  const blob = await store.readAttachment(PAPER_HASH);
  expect(blob?.type).toBe('text/plain');
  expect(await blob?.text()).toBe('sold as seen');
  expect(await store.attachmentsOf(lot)).toEqual([
    {
      hash: PAPER_HASH,
      name: 'terms.txt',
      mediaType: 'text/plain',
      sizeBytes: 12,
      about: 'other',
      note: 'from the desk',
      entry: kept.entries[0]?.id,
      at: kept.entries[0]?.at,
      author: 'buyer',
    },
  ]);
  expect(await store.readAttachment('0'.repeat(64))).toBeNull();
});

test('the same bytes are kept once, and twice on one lot makes no second entry', async () => {
  const { store, lot } = await withLot();
  const { lots } = { lots: (await store.allLots()).map(({ id }) => id) };
  value(await store.keepAttachment(lot, PAPER));
  expect(value(await store.keepAttachment(lot, PAPER)).entries).toEqual([]);
  expect(value(await store.keepAttachment(at(lots, 1), PAPER)).entries).toHaveLength(1);
  expect((await dump()).files).toHaveLength(1);
});

test('undoing takes the file from the lot and keeps its bytes, so that the undo can be undone', async () => {
  const { store, lot } = await withLot();
  const [entry] = value(await store.keepAttachment(lot, PAPER)).entries;
  if (entry === undefined) throw new Error('no entry');
  const [undo] = value(await store.undo(entry.id));
  expect(await store.attachmentsOf(lot)).toEqual([]);
  expect(await store.readAttachment(PAPER_HASH)).not.toBeNull();
  if (undo === undefined) throw new Error('no entry');
  value(await store.undo(undo.id));
  expect(await store.attachmentsOf(lot)).toHaveLength(1);
});

test.each(['files', 'entries'] as const)(
  'a disk that is full at the write of %s loses nothing and leaves nothing half',
  async (place) => {
    const { store, lot } = await withLot();
    value(await store.keepAttachment(lot, PAPER));
    const before = await dump();
    const struck = failWrite(place, 1, 'disk-full');
    const refusal = await store.keepAttachment(lot, { ...PAPER, bytes: new Blob(['another']) });
    expect(struck()).toBe(true);
    expect(refusal).toMatchObject({ ok: false, reason: 'disk-full' });
    expect(await dump()).toEqual(before);
    expect((await store.checkJournal()).attachments).toEqual({ files: 1, faults: [] });
  },
);

test('a file that does not fit is refused before anything is written, and says how much is left', async () => {
  const { store, lot } = await withLot({ room: async () => ({ usedBytes: 990, quotaBytes: 1000 }) });
  const refusal = await store.keepAttachment(lot, PAPER);
  expect(refusal).toMatchObject({ ok: false, reason: 'disk-full', message: expect.stringContaining('10 bytes') });
  expect(await store.attachmentsOf(lot)).toEqual([]);
});

test('the user is warned before the room is gone', async () => {
  const room = { usedBytes: 79e9, quotaBytes: 100e9 };
  const { store, lot } = await withLot({ room: async () => room });
  expect(value(await store.keepAttachment(lot, PAPER)).warning).toBeNull();
  room.usedBytes = 80e9;
  const { warning } = value(await store.keepAttachment(lot, { ...PAPER, bytes: new Blob(['b']) }));
  expect(warning).toContain('20.0 GB of 100.0 GB left');
  Object.assign(room, { usedBytes: 1e6, quotaBytes: 150e6 });
  expect(value(await store.keepAttachment(lot, { ...PAPER, bytes: new Blob(['c']) })).warning).toContain('149 MB');
});

test('what is empty, too large, gone from the disk, or for a lot that is not here is refused with a sentence', async () => {
  const { store, lot } = await withLot();
  const keep = (bytes: Blob | Uint8Array<ArrayBuffer>, id = lot) => store.keepAttachment(id, { ...PAPER, bytes });
  expect(await keep(new Blob([]))).toMatchObject({ ok: false, reason: 'empty-file' });
  const huge = Object.defineProperty(new Blob(['x']), 'size', { value: 100_000_001 });
  expect(await keep(huge)).toMatchObject({
    ok: false,
    reason: 'file-too-large',
    message: expect.stringContaining('MB'),
  });
  const gone = Object.assign(new Blob(['x']), { arrayBuffer: () => Promise.reject(new Error('gone')) });
  expect(await keep(gone)).toMatchObject({ ok: false, reason: 'not-readable' });
  const other = '0'.repeat(26) as LotId;
  expect(await keep(new Blob(['x']), other)).toMatchObject({ ok: false, reason: 'no-such-lot' });
  expect((await dump()).files).toEqual([]);
});

test('bytes that are not those that were kept, and bytes that are gone, are found by the check', async () => {
  const { store, lot } = await withLot();
  value(await store.keepAttachment(lot, PAPER));
  const gone = value(await store.keepAttachment(lot, { ...PAPER, name: 'gone.txt', bytes: new Blob(['gone']) }));
  const { openDB } = await import('idb');
  const database = await openDB('headroom');
  await database.put('files', { hash: PAPER_HASH, blob: new Blob(['sold as SEEN']) });
  await database.delete('files', gone.hash);
  database.close();
  expect((await store.checkJournal()).attachments).toEqual({
    files: 1,
    faults: [expect.stringMatching(/^terms\.txt is damaged/), expect.stringMatching(/^gone\.txt is missing/)],
  });
});
