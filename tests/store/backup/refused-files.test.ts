import fc from 'fast-check';
import { beforeEach, expect, test } from 'vitest';
import { at } from '../../folds/journal-arbitrary.ts';
import { freshBrowser, value } from '../open-test-store.ts';
import { closed, read, refused, sample, tamperedLine } from './backup-samples.ts';

beforeEach(freshBrowser);

test('an empty file, and files of other programs, are told apart from backups', async () => {
  expect(await refused('')).toMatchObject({ reason: 'empty' });
  for (const other of [
    '\n',
    '{}',
    'vin,miles\n1,2\n',
    '{"format":"headroom-setup","version":1}',
    '[1]\n[2]',
    '\u0000PNG',
    'null',
  ])
    expect(await refused(other)).toMatchObject({
      reason: 'not-a-backup',
      message: 'This file is not a backup of Headroom.',
    });
});

test('a backup of a newer version says to update first', async () => {
  const [header = '', ...rest] = await sample();
  const newer = [header.replace('"version":3', '"version":4,"more":{}'), ...rest];
  expect(await refused(closed(newer))).toMatchObject({
    reason: 'newer-version',
    message: expect.stringContaining('Update'),
  });
});

test('a damaged header is named', async () => {
  const [header = '', ...rest] = await sample();
  const broken = [header.replace('"counts"', '"count"'), ...rest];
  expect(await refused(closed(broken))).toMatchObject({
    reason: 'bad-header',
    message: expect.stringContaining('counts'),
  });
});

test('a file that is cut off anywhere is refused', async () => {
  const text = `${(await sample()).join('\n')}\n`;
  const whole = value(await read(text.slice(0, -1)));
  expect(whole.entries).toHaveLength(3);
  for (let end = 30; end < text.length - 1; end += 3) {
    const { reason } = await refused(text.slice(0, end));
    expect(reason).toBe('truncated');
  }
  for (let end = 1; end < 26; end += 5) expect((await refused(text.slice(0, end))).reason).toBe('not-a-backup');
});

test('a file that is cut off says after how many entries', async () => {
  const lines = await sample(5);
  const { message } = await refused(`${lines.slice(0, 4).join('\n')}\n`);
  expect(message).toContain('after 3 of 5 entries');
});

test('a line that is not JSON is named by its number', async () => {
  const lines = await sample();
  lines[2] = `${lines[2]?.slice(0, 40)}`;
  expect(await refused(closed(lines))).toMatchObject({
    reason: 'bad-json',
    message: expect.stringContaining('Line 3'),
  });
});

test('a line that is no entry is named by its number, and by what is wrong', async () => {
  const lines = await sample();
  lines[2] = tamperedLine(at(lines, 2), (entry) => {
    entry.at = 'yesterday';
  });
  const { reason, message } = await refused(closed(lines));
  expect(reason).toBe('bad-entry');
  expect(message).toMatch(/Line 3 .*\(at: /);
});

test('an entry of a newer version that is nested without end is refused, and does not overflow the check', async () => {
  const lines = await sample();
  const deep = `${'['.repeat(100_000)}${']'.repeat(100_000)}`;
  lines[2] = at(lines, 2)
    .replace(/"happening":\{/, `"happening":{"deep":${deep},`)
    .replace(/"version":\d+/, '"version":99');
  expect(await refused(closed(lines))).toMatchObject({
    reason: 'bad-entry',
    message: expect.stringContaining('Line 3'),
  });
});

test('a file of one endless line is told from a backup without being read to its end', async () => {
  const [header = ''] = await sample();
  for (const [begin, reason] of [
    ['', 'not-a-backup'],
    [`${header}\n`, 'truncated'],
  ] as const) {
    const endless = endlessFile(begin);
    expect((await refused(endless.file)).reason).toBe(reason);
    expect(endless.megabytes()).toBeLessThan(70);
  }
});

/** A file of a terabyte without a line's end after its beginning, and how much of it has been read. */
function endlessFile(begin: string): { file: Blob; megabytes: () => number } {
  const megabyte = new Uint8Array(1_000_000).fill(0x78);
  let read = 0;
  const stream = () =>
    new ReadableStream<Uint8Array>({
      start: (controller) => controller.enqueue(new TextEncoder().encode(begin)),
      pull(controller) {
        read += 1;
        controller.enqueue(megabyte);
      },
    });
  const file = Object.assign(new Blob([begin]), { stream });
  Object.defineProperty(file, 'size', { value: 1e12 });
  return { file, megabytes: () => read };
}

test('any change to any byte is refused', async () => {
  const text = `${(await sample(2)).join('\n')}\n`;
  await fc.assert(
    fc.asyncProperty(fc.nat(text.length - 2), fc.constantFrom('0', 'Z', '"', '\n', ' ', 'é'), async (where, letter) => {
      fc.pre(text[where] !== letter);
      // A blank after a comma is still JSON, and still another file.
      expect((await read(text.slice(0, where) + letter + text.slice(where + 1))).ok).toBe(false);
    }),
    { numRuns: 120 },
  );
});

test('a file that an editor gave other line ends, or a byte order mark, is not as it was written', async () => {
  const text = `${(await sample()).join('\n')}\n`;
  expect(await refused(text.replaceAll('\n', '\r\n'))).toMatchObject({ reason: 'altered' });
  expect(await refused(`\uFEFF${text}`)).toMatchObject({ reason: 'altered' });
});

test('an entry that was changed is named, although the line still reads well', async () => {
  const lines = await sample();
  lines[2] = tamperedLine(at(lines, 2), (entry) => {
    entry.author = 'someone else';
  });
  const { reason, message } = await refused(`${lines.join('\n')}\n`);
  expect(reason).toBe('altered');
  expect(message).toContain('Entry number 2');
});

test('a missing entry is refused even when the checksum was made to fit', async () => {
  const lines = await sample();
  lines.splice(2, 1);
  expect((await refused(closed(lines))).reason).toBe('altered');
});

test('a chain that was written anew is refused where the first line still names its old end', async () => {
  const lines = await sample();
  const last = lines.length - 2;
  const change = (entry: Record<string, unknown>) => {
    entry.author = 'someone else';
  };
  lines[last] = tamperedLine(at(lines, last), change, true);
  const { reason, message } = await refused(closed(lines));
  expect(reason).toBe('altered');
  expect(message).toContain('do not end where its first line says');
});

test('a lot that comes in twice is refused', async () => {
  const lines = await sample();
  const born = JSON.parse(at(lines, 1)).happening;
  lines[2] = tamperedLine(
    at(lines, 2),
    (entry) => {
      entry.happening = born;
    },
    true,
  );
  expect(await refused(closed(lines))).toMatchObject({
    reason: 'lot-twice',
    message: expect.stringContaining('Line 3'),
  });
});
