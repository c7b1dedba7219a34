import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { BACKUP_VERSION } from '../../src/store/backup/backup-format.ts';
import { MIGRATIONS } from '../../src/store/connection/migrations/list.ts';
import { useBrowser } from './drivers/use-browser.ts';
import { openStoreTab } from './open-store-tab.ts';

const browser = useBrowser();
const BACKUPS = new URL('../fixtures/backups/', import.meta.url);

const openTab = (name: string) => openStoreTab(browser, name);

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

test('a browser that is killed in the middle of an import keeps whole batches, one chain and right views', async () => {
  const page = await openTab('killed');
  await page.run(() => window.storeProgram.importWithoutEnd('killed'));
  const told = await page.until(() => (window.storeProgram.written >= 1000 ? window.storeProgram.written : null));
  await browser.restart('killed');
  const again = await openTab('killed');
  const numbers = await again.run(() => window.storeProgram.lotNumbers('killed'));
  expect(numbers.length % 125).toBe(0);
  expect(numbers.length).toBeGreaterThanOrEqual(told);
  expect(numbers).toEqual(numbers.map((_, i) => `${i}`));
  await again.run(() => window.storeProgram.typeLots('killed', 'after', 2));
  expect(await again.run(() => window.storeProgram.findings('killed'))).toEqual([]);
  expect(await again.run(() => window.storeProgram.viewsAreRight('killed'))).toBe(true);
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
  // Everything between the first line and the last: the entries, and the attached files after them.
  const entries = (all: string): string[] => all.trim().split('\n').slice(1, -1);
  expect(added).toBe(entries(text).filter((line) => line.includes('"happening"')).length);
  expect(entries(await page.run((name) => window.storeProgram.backupText(name), file))).toEqual(entries(text));
  expect(await page.run((name) => window.storeProgram.findings(name), file)).toEqual([]);
});

test('tens of MB of attachments go through a backup byte for byte', async () => {
  const page = await openTab('heavy');
  await page.run(() => window.storeProgram.open('light'));
  const { size, same } = await page.run(() => window.storeProgram.carryFiles('heavy', 'light', 2, 11_000_000));
  expect(size).toBeGreaterThan(22_000_000);
  expect(same).toBe(true);
  expect(await page.run(() => window.storeProgram.fileFaults('light'))).toEqual([]);
});

test('there is a backup of each browser to restore in the other', () => {
  expect(files).toEqual(
    expect.arrayContaining(
      ['v1', 'v2', 'v3'].flatMap((version) => [`${version}-chromium.jsonl`, `${version}-firefox.jsonl`]),
    ),
  );
});
