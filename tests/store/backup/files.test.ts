import fc from 'fast-check';
import { openDB } from 'idb';
import { beforeEach, expect, test } from 'vitest';
import { fromBase64, toBase64 } from '../../../src/journal/base64.ts';
import { hashOfText } from '../../../src/journal/entry-hash.ts';
import { FILE_PART } from '../../../src/store/backup/backup-format.ts';
import type { Store } from '../../../src/store/store.ts';
import { at } from '../../folds/journal-arbitrary.ts';
import { freshBrowser, openTestStore, testRandom, value } from '../open-test-store.ts';
import { dump } from '../raw-database.ts';
import { backupText, read, refused } from './backup-samples.ts';

beforeEach(freshBrowser);

/** Larger than one part, and no whole number of parts. */
const PICTURE = Uint8Array.from({ length: FILE_PART + 7 }, (_, i) => (i * 31 + (i >> 8)) % 256);

async function withFiles(): Promise<Store> {
  const store = await openTestStore({ name: 'with-files' });
  const { lots } = value(await store.addLots('typed', [{ facts: { make: 'Alder' } }]));
  const file = { name: 'page.png', mediaType: 'image/png', about: 'page-picture' } as const;
  value(await store.keepAttachment(at(lots, 0), { ...file, bytes: PICTURE }));
  value(await store.keepAttachment(at(lots, 0), { ...file, name: 'small.png', bytes: new Uint8Array([1]) }));
  return store;
}

test('base 64 is that of Node, for any bytes, and what is none is not read', () => {
  fc.assert(
    fc.property(fc.uint8Array({ maxLength: 100 }), (bytes) => {
      const text = toBase64(bytes);
      expect(text).toBe(Buffer.from(bytes).toString('base64'));
      expect(fromBase64(text)).toEqual(new Uint8Array(bytes));
    }),
  );
  expect(Buffer.from(toBase64(PICTURE), 'base64').equals(PICTURE)).toBe(true);
  expect(fromBase64('ä')).toBeNull();
});

test('files come back byte for byte with their type, into an empty browser and into one that has them', async () => {
  const text = await backupText(await withFiles());
  const other = await openTestStore({ name: 'other', random: testRandom(3) });
  for (const added of [3, 0]) {
    const backup = value(await read(text));
    expect(value(await other.restore(backup, { mode: 'merge' }))).toMatchObject({ added, files: 2 });
  }
  const [lot] = await other.allLots();
  const [picture, small] = await other.attachmentsOf(at(lot === undefined ? [] : [lot.id], 0));
  const blob = await other.readAttachment(picture?.hash ?? '');
  expect(blob?.type).toBe('image/png');
  expect(Buffer.from((await blob?.arrayBuffer()) ?? new ArrayBuffer(0)).equals(PICTURE)).toBe(true);
  expect(await (await other.readAttachment(small?.hash ?? ''))?.arrayBuffer()).toEqual(new Uint8Array([1]).buffer);
  const filesOf = (all: string) => all.split('\n').filter((line) => /^\{"(?:file|bytes)"/.test(line));
  expect(filesOf(await backupText(other))).toEqual(filesOf(text));
});

test('a damaged file is left out, said so, and a restore heals it where the backup has it whole', async () => {
  const store = await withFiles();
  const good = value(await read(await backupText(store)));
  const database = await openDB('with-files');
  const [hash] = await database.getAllKeys('files');
  await database.put('files', { hash, blob: new Blob(['rotten']) });
  database.close();
  const file = await store.backup();
  expect(file).toMatchObject({ files: 1, damaged: 1 });
  const lacking = value(await read(await file.blob.text()));
  expect([...lacking.named].filter((one) => !lacking.files.has(one))).toEqual([hash]);
  value(await store.restore(good, { mode: 'merge' }));
  expect((await store.checkJournal()).attachments).toEqual({ files: 2, faults: [] });
  // A replacement keeps the one that the backup names and lacks.
  value(await store.restore(lacking, { mode: 'replace' }));
  expect((await store.checkJournal()).attachments).toEqual({ files: 2, faults: [] });
});

test('a replacement throws away the files that only this browser had', async () => {
  const empty = await openTestStore({ name: 'empty', random: testRandom(3) });
  value(await empty.addLots('typed', [{ facts: {} }]));
  const store = await withFiles();
  value(await store.restore(value(await read(await backupText(empty))), { mode: 'replace' }));
  expect((await dump('with-files')).files).toEqual([]);
});

test('every way to break the files in a backup is refused', async () => {
  const lines = (await backupText(await withFiles())).trimEnd().split('\n');
  const head = lines.findIndex((line) => line.startsWith('{"file"'));
  /** The lines as a file whose last line is right again: only the files themselves can show what was done. */
  const sealed = (all: string[]): string => {
    const body = all.slice(0, -1).map((line) => `${line}\n`);
    return `${body.join('')}${JSON.stringify({ sha256: hashOfText(body.join('')) })}\n`;
  };
  const without = (line: number): string[] => lines.filter((_, i) => i !== line);
  const changed = (line: number, from: string | RegExp, to: string): string[] =>
    lines.map((text, i) => (i === line ? text.replace(from, to) : text));
  expect((await read(sealed(lines))).ok).toBe(true);
  const broken = [
    without(head),
    without(head + 1),
    without(head + 2),
    changed(head, /"sizeBytes":\d+/, '"sizeBytes":3'),
    changed(head, /"hash":"../, '"hash":"zz'),
    changed(head + 1, /":"../, '":"zz'),
    changed(head + 1, /":"../, '":"%%'),
    [...lines.slice(0, head + 1), '{"neither":1}', ...lines.slice(head + 1)],
    lines.with(head + 1, at(lines, head + 2)).with(head + 2, at(lines, head + 1)),
  ];
  for (const all of broken) expect(await refused(sealed(all))).toMatchObject({ reason: 'bad-file' });
  expect(await refused(lines.slice(0, -1).join('\n'))).toMatchObject({ reason: 'truncated' });
  expect(await refused(without(head + 3).join('\n'))).toMatchObject({
    reason: expect.stringMatching(/bad-file|altered/),
  });
});
