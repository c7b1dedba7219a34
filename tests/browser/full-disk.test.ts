import { afterAll, describe, expect, test } from 'vitest';
import { openClockTab } from './drivers/open-clock-tab.ts';
import { SmallDisk } from './drivers/small-disk.ts';
import { useBrowser } from './drivers/use-browser.ts';
import { waitUntil } from './drivers/wait-until.ts';

const MINUTE = 60;
/** Large enough for a browser's own profile. */
const MEGABYTES = 200;
const TROUBLE = 'not-saved #/backup';

describe('on a disk that is full', () => {
  if (!SmallDisk.canBe) {
    test('nothing can be tried: only the superuser of Linux may have a small disk', () => {
      expect(process.getuid?.() === 0 && process.platform === 'linux').toBe(false);
    });
    return;
  }
  let made: SmallDisk | undefined;
  const disk = () => {
    made ??= new SmallDisk(MEGABYTES);
    return made;
  };
  // Before the browser's, so that it comes after it: hooks at the end run the other way around.
  afterAll(() => made?.remove());
  const browser = useBrowser('America/Boise', {
    disk: () => disk().folder,
    // Browsers say of their own accord that they can't write.
    mayComplain: /disk|space|quota|database|storage|IndexedDB/i,
  });

  test('every reminder is said, once; one sentence tells of the disk; and with room again all of it is known', async () => {
    const page = await openClockTab(browser);
    await page.run(() => window.clockProgram.quiet());
    // High time for one, time enough for the next, and one that closed unsaid: three notices.
    const ids: string[] = [];
    for (const [when, leads] of [
      [8 * MINUTE, [10]],
      [24 * MINUTE, [25, 5]],
      [-10 * MINUTE, [5]],
    ] as const)
      ids.push(...(await page.run((at, own) => window.clockProgram.add([at], [...own]), when, leads)));
    const now = await browser.open(`options-page/index.html#/now/${ids[0]}`);
    await now.fill({ field: 'Your proxy' }, '9,100');
    disk().fill();
    const plan = () => page.run(() => window.clockProgram.planAgain());
    const called = async () => {
      const there = await browser.noticeIds();
      return ids.filter((id) => there.some((one) => new RegExp(`^(lot|soon|closed)-${id} `).test(one)));
    };
    await plan();
    disk().fill();
    await plan();
    expect(await called()).toEqual(ids);

    // The database may have let a little in before the disk was really full; from here on nothing can be written.
    await now.click({ button: 'I placed $9,100' });
    await now.sees('Not saved: proxy of $9,100.');
    await now.sees('The disk is full');
    await page.run(() => window.clockProgram.dismissAll());
    await browser.stopBackground();
    await plan();
    expect(await called(), 'said again').toEqual([]);

    const reloaded = await browser.open('options-page/index.html#/lots');
    // Chromium can't open its database any more once a write has failed; Firefox still reads.
    await reloaded.until(() => /The disk is full|Hauler 0/.test(document.body.textContent));
    expect(await reloaded.run(() => document.body.textContent.includes('restart the browser'))).toBe(false);
    await reloaded.close();

    disk().free();
    await waitUntil('what was said to be known', async () => {
      await plan();
      return (await page.run(async (which) => (await window.clockProgram.unsaid(which)).length, ids)) === 0;
    });
    expect(await browser.noticeIds()).not.toContain(TROUBLE);
    await now.click({ button: 'Save it again' });
    await page.until(async (id) => (await window.clockProgram.lot(id))?.facts.proxy === 910_000, ids[0] ?? '');
    expect(await page.run(() => window.clockProgram.findings())).toBe(0);
    await now.close();
    await page.close();
  });
});
