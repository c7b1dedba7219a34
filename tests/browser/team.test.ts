import { afterAll, beforeAll, expect, inject, test } from 'vitest';
import { writeServerKeys } from '../../src/team/access/server-keys.ts';
import { type RealServer, realServer } from '../team-server/real-server.ts';
import { AXE, violations } from './axe.ts';
import type { Browser } from './drivers/browser.ts';
import { startChromium } from './drivers/chromium-browser.ts';
import { startFirefox } from './drivers/firefox-browser.ts';
import { useBrowser } from './drivers/use-browser.ts';
import { openStoreTab } from './open-store-tab.ts';

const PAGE = 'options-page/index.html';
const browser = useBrowser(undefined, { mayComplain: /WebSocket|can’t establish a connection/ });
let server: RealServer;
let second: Browser;

beforeAll(async () => {
  server = await realServer([]);
  const folder = inject('extensionFolder');
  second =
    inject('browserName') === 'chromium'
      ? await startChromium(folder)
      : await startFirefox(folder, undefined, inject('usedProfile'));
});
afterAll(async () => {
  await second?.close();
  server?.stop();
});

test('a team is started and joined, a change in one browser shows in the other, and a server that is gone is said', async () => {
  const owner = await browser.open(`${PAGE}#/team`);
  await owner.fill({ field: 'Dealership' }, 'Cottonwood Truck & Van');
  await owner.fill({ field: 'Who uses this computer?' }, 'owner');
  await owner.fill({ field: 'Text of the team’s server' }, writeServerKeys(server.keys));
  await owner.click({ button: 'Start the team' });
  await owner.sees('This computer is in the team as owner');
  // Firefox asked for it, in that press, and the driver's profile says yes to whatever is asked.
  if (browser.name === 'firefox')
    expect(await browser.ask(async () => JSON.stringify(await chrome.permissions.getAll()))).toContain(
      'financialAndPaymentInfo',
    );
  await owner.fill({ field: 'Who is it for?' }, 'manager');
  await owner.click({ button: 'Make an invitation' });
  const text = await owner.until(() => document.querySelector<HTMLTextAreaElement>('textarea[readonly]')?.value);

  const manager = await second.open(`${PAGE}#/team`);
  await manager.fill({ field: 'Invitation' }, text);
  await manager.click({ button: 'Read the invitation' });
  await manager.sees('Cottonwood Truck & Van invites this computer as manager, manager.');
  await manager.click({ button: 'Join the team' });
  await manager.sees('In step,');
  await owner.sees('(this computer)');
  for (const [page, width, dark] of [
    [owner, 1280, false],
    [manager, 400, true],
  ] as const) {
    await page.addProgram(AXE);
    await page.resize(width, 800);
    await page.showAs({ dark });
    await page.until(() => document.documentElement.scrollWidth <= innerWidth);
    expect(await violations(page)).toEqual([]);
    if (process.env.PICTURES) await page.screenshot(`${process.env.PICTURES}/team-${browser.name}-${width}.png`);
  }

  // What is written in one browser shows on the page that is open in the other, within seconds.
  await manager.run(() => {
    location.hash = '#/lots';
  });
  const writer = await openStoreTab(browser, 'headroom');
  await writer.run(() => window.storeProgram.typeLots('headroom', 'a', 1));
  await manager.until(() => document.querySelectorAll('.lot-row').length === 1);

  await server.kill(0);
  const other = await openStoreTab(second, 'headroom');
  await other.run(() => window.storeProgram.typeLots('headroom', 'b', 1));
  await manager.sees('1 entry not sent since');
  await manager.sees('not shown on any screen');
  await server.start(0);
  await manager.sees('In step,');
  await writer.until(async () => (await window.storeProgram.lotNumbers('headroom')).length === 2);

  // With no page open, the background lets the same program run at its next wake.
  await owner.close();
  await other.run(() => window.storeProgram.typeLots('headroom', 'c', 1));
  await browser.ask(() => chrome.runtime.sendMessage({ headroom: 'plan-again', request: {} }));
  await writer.until(async () => (await window.storeProgram.lotNumbers('headroom')).length === 3);

  const again = await browser.open(`${PAGE}#/team`);
  await again.click('button[aria-label="Put out: manager"]');
  await again.click({ button: 'Put manager out for good' });
  await again.sees('(put out)');
  // Shut out at the server at once, so it can't even read that it was put out; it says what may be.
  await manager.run(() => {
    location.hash = '#/team';
  });
  await manager.sees('does not let this computer in');
});

test('no key of a team is in what a page outside can see of the extension', async () => {
  const names = await browser.ask(async () => {
    const all = await chrome.storage.local.get(null);
    const session = await chrome.storage.session.get(null);
    return JSON.stringify([all, session]);
  });
  expect(names).not.toMatch(/SU[A-Z2-7]{20}|SO[A-Z2-7]{20}|SA[A-Z2-7]{20}|headroom-server/);
});
