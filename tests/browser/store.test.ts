import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { build } from 'esbuild';
import { expect, test } from 'vitest';
import { BACKUP_VERSION } from '../../src/store/backup/backup-format.ts';
import { MIGRATIONS } from '../../src/store/migrations/list.ts';
import type { Page } from './drivers/browser.ts';
import { useBrowser } from './drivers/use-browser.ts';

const browser = useBrowser();
const BACKUPS = new URL('../fixtures/backups/', import.meta.url);

/** A tab of the extension that runs nothing but the store. */
async function openTab(name: string): Promise<Page> {
  const page = await browser.open('bare-pages/bare.html');
  const { outputFiles } = await build({
    entryPoints: ['tests/browser/programs/store-program.ts'],
    bundle: true,
    format: 'iife',
    write: false,
  });
  for (const { text } of outputFiles) await page.addProgram(text);
  await page.run((wanted) => window.storeProgram.open(wanted), name);
  return page;
}

test('two tabs that write at once lose nothing, and the chain stays one', async () => {
  const [one, two] = [await openTab('tabs'), await openTab('tabs')];
  await Promise.all([
    one.run(() => window.storeProgram.typeLots('tabs', 'a', 30)),
    two.run(() => window.storeProgram.typeLots('tabs', 'b', 30)),
  ]);
  const numbers = await one.run(() => window.storeProgram.lotNumbers('tabs'));
  expect(new Set(numbers).size).toBe(60);
  expect(await two.run(() => window.storeProgram.lotNumbers('tabs'))).toEqual(numbers);
  expect(await two.run(() => window.storeProgram.findings('tabs'))).toEqual([]);
});

test('an upgrade that fails leaves the old version and everything in it', async () => {
  const page = await openTab('upgrade');
  await page.run(() => window.storeProgram.typeLots('upgrade', 'a', 2));
  await page.run(() => window.storeProgram.close('upgrade'));
  expect(await page.run(() => window.storeProgram.upgrade('upgrade', true))).toBe('upgrade-failed');
  const { version, stores } = await page.run(() => window.storeProgram.look('upgrade'));
  expect(version).toBe(MIGRATIONS.length);
  expect(stores).not.toContain('half-way');
  await page.run(() => window.storeProgram.open('upgrade'));
  expect(await page.run(() => window.storeProgram.lotNumbers('upgrade'))).toEqual(['a0', 'a1']);
});

test('a tab of an older version lets a newer one take over, and is told', async () => {
  const [old, fresh] = [await openTab('takeover'), await openTab('other')];
  expect(await fresh.run(() => window.storeProgram.upgrade('takeover', false))).toBeNull();
  const notices = await old.until(() => window.storeProgram.notices.length > 0 && window.storeProgram.notices);
  expect(notices).toEqual([expect.stringContaining('Reload this page')]);
});

// A backup is made when its version ships, and is then left alone: it stands for the files that users keep.
if (process.env.UPDATE_FIXTURES === '1')
  test('a backup is made in this browser', async () => {
    const page = await openTab('work');
    await page.run(() => window.storeProgram.doSomeWork('work'));
    const text = await page.run(() => window.storeProgram.backupText('work'));
    writeFileSync(new URL(`v${BACKUP_VERSION}-${browser.name}.jsonl`, BACKUPS), text);
  });

const files = readdirSync(BACKUPS);
test.each(files)('the backup %s is restored, and written out again the same', async (file) => {
  const text = readFileSync(new URL(file, BACKUPS), 'utf8');
  const page = await openTab(file);
  const { added } = await page.run((name, all) => window.storeProgram.restore(name, all), file, text);
  const entries = (all: string): string[] => all.trim().split('\n').slice(1, -1);
  expect(added).toBe(entries(text).length);
  expect(entries(await page.run((name) => window.storeProgram.backupText(name), file))).toEqual(entries(text));
  expect(await page.run((name) => window.storeProgram.findings(name), file)).toEqual([]);
});

test('there is a backup of each browser to restore in the other', () => {
  expect(files).toEqual(expect.arrayContaining(['v1-chromium.jsonl', 'v1-firefox.jsonl']));
});
