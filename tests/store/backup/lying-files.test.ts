import { beforeEach, expect, test } from 'vitest';
import { readBackup } from '../../../src/store/backup/read-backup.ts';
import { sayProvedOfBackup } from '../../../src/store/backup/say-backup.ts';
import { at } from '../../folds/journal-arbitrary.ts';
import { freshBrowser, openTestStore, testRandom, value } from '../open-test-store.ts';
import { dump } from '../raw-database.ts';
import { backupText, closed, read, refused, sample } from './backup-samples.ts';

// Files that were changed by somebody who knows the format and made the checksum anew: they pass as files, so what is missing in
// them has to be said.
beforeEach(freshBrowser);

/** Two pictures of one lot, as the lines of a backup. */
async function withPictures(): Promise<string[]> {
  const store = await openTestStore({ name: 'pictures' });
  const { lots } = value(await store.addLots('typed', [{ facts: { make: 'Alder' } }]));
  for (const name of ['front.png', 'title.pdf'])
    value(
      await store.keepAttachment(at(lots, 0), {
        name,
        mediaType: 'image/png',
        about: 'page-picture',
        bytes: new TextEncoder().encode(name.repeat(40)),
      }),
    );
  const lines = (await backupText(store)).trimEnd().split('\n');
  store.close();
  return lines;
}
const isFile = (line: string) => /^\{"(?:file|bytes)"/.test(line);
const countsFiles = (line: string, files: number) => line.replace(/"files":\d+/, `"files":${files}`);

test('pictures that were taken out are named, whether the count was changed with them or not', async () => {
  const lines = await withPictures();
  const without = lines.filter((line) => !isFile(line));
  const kept = value(await read(closed(without)));
  expect(kept.told.join(' ')).toContain('2 attached files that entries name are not in it: front.png, title.pdf.');
  expect(kept.told).toContain('Its first line counts 2 attached files, and 0 came whole.');
  const quiet = value(await read(closed([countsFiles(at(without, 0), 0), ...without.slice(1)])));
  expect(quiet.told.join(' ')).toContain('2 attached files that entries name are not in it: front.png, title.pdf.');
  const begun = lines.findIndex(isFile);
  const one = [...lines.slice(0, begun), ...lines.slice(begun + 2)];
  const last = value(await read(closed([countsFiles(at(one, 0), 1), ...one.slice(1)])));
  expect(last.told.join(' ')).toMatch(
    /1 attached file that an entry names is not in it: (front\.png|title\.pdf)\. It was/,
  );
  expect(sayProvedOfBackup(last).join(' ')).not.toContain('2 attached files');
});

test('a restore of such a file leaves the pictures that are here', async () => {
  const store = await openTestStore({ name: 'pictures' });
  const { lots } = value(await store.addLots('typed', [{ facts: { make: 'Alder' } }]));
  const file = {
    name: 'front.png',
    mediaType: 'image/png',
    about: 'page-picture',
    bytes: new Uint8Array([7]),
  } as const;
  value(await store.keepAttachment(at(lots, 0), file));
  const lines = (await backupText(store)).trimEnd().split('\n');
  const backup = value(await read(closed(lines.filter((line) => !isFile(line)))));
  for (const mode of ['merge', 'replace'] as const) {
    value(await store.restore(backup, { mode }));
    expect((await dump('pictures')).files).toHaveLength(1);
  }
});

test('a changed count of lots is found, and what the entries really bring in is said', async () => {
  const lines = await sample(3);
  const more = value(await read(closed([at(lines, 0).replace('"lots":3', '"lots":4'), ...lines.slice(1)])));
  expect(more.faults).toEqual([
    'Its first line counts 4 lots, but its entries bring in 3: one of the two was changed.',
  ]);
});

test('a cut inside the pictures says that the entries are whole, and how many pictures came', async () => {
  const lines = await withPictures();
  const files = lines.findIndex(isFile);
  const entries = files - 1;
  const { reason, message } = await refused(
    `${lines.slice(0, files + 3).join('\n')}\n${at(lines, files + 3).slice(0, 30)}`,
  );
  expect(reason).toBe('truncated');
  expect(message).toContain(`cut off behind its ${entries} entries, which are all there`);
  expect(message).toContain('(pictures and papers) 1 of 2 came whole');
  expect((await refused(lines.slice(0, files).join('\n'))).message).toContain('0 of 2 came whole');
});

test('it is held against a noted fingerprint before anything is touched', async () => {
  const store = await openTestStore({ name: 'noted' });
  value(await store.addLots('typed', [{ facts: { lotNumber: '1' } }]));
  const { heads } = await store.about();
  const honest = await backupText(store);
  const other = await openTestStore({ name: 'forged', random: testRandom(5) });
  value(await other.addLots('typed', [{ facts: { lotNumber: '2' } }]));
  const hold = async (text: string) => value(await readBackup(new Blob([text]), { heads, keys: [] })).noted;
  expect(await hold(honest)).toMatchObject([{ as: 'kept' }]);
  expect(await hold(await backupText(other))).toMatchObject([
    { as: 'broken', message: expect.stringContaining('noted') },
  ]);
});
