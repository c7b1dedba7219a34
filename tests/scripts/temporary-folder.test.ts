import { existsSync, mkdirSync, mkdtempSync, readdirSync, rmSync, utimesSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { sweepLeftovers, temporaryFolder } from '../../scripts/temporary-folder.ts';
import { DAY } from '../../src/domain/time/units.ts';

/** Above the largest number that Linux gives a process, so nobody has it. */
const NOBODY = 2 ** 22 + 1;
const NOW = Date.UTC(2026, 10, 28);

let inside = '';
beforeEach(() => {
  inside = mkdtempSync(path.join(tmpdir(), 'headroom-sweep-'));
});
afterEach(() => rmSync(inside, { recursive: true }));

/** A folder as a run of another process would have it. */
function folderOf(owner: string, touched = NOW): string {
  const folder = path.join(inside, `headroom-test-${owner}-AbCdEf`);
  mkdirSync(folder);
  utimesSync(folder, touched / 1000, touched / 1000);
  return folder;
}

/** How this process names its own: which numbering of processes it is in. */
function here(): string {
  const own = path.basename(temporaryFolder(inside));
  return /^headroom-test-(\d+)-/.exec(own)?.[1] ?? 'no number';
}

test('the folder of this process stays, and that of a process which has ended goes', () => {
  const own = temporaryFolder(inside);
  const ended = folderOf(`${here()}-${NOBODY}`);
  sweepLeftovers(inside, NOW);
  expect([existsSync(own), existsSync(ended)]).toEqual([true, false]);
});

test('the folder of a run in another process namespace stays, though nobody here has its number', () => {
  const elsewhere = folderOf(`123456789-${NOBODY}`);
  sweepLeftovers(inside, NOW);
  expect(existsSync(elsewhere)).toBe(true);
});

test('what nobody can be asked about goes once it has not been touched for a day', () => {
  const elsewhere = folderOf(`123456789-${NOBODY}`, NOW - DAY);
  const ofAnOlderVersion = folderOf(`${NOBODY}`, NOW - DAY);
  sweepLeftovers(inside, NOW);
  expect([existsSync(elsewhere), existsSync(ofAnOlderVersion)]).toEqual([false, false]);
});

test('other folders are not ours to remove', () => {
  mkdirSync(path.join(inside, 'somebody-elses'));
  sweepLeftovers(inside, NOW);
  expect(readdirSync(inside)).toContain('somebody-elses');
});
