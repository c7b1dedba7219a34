import { expect, test } from 'vitest';
import { readBuyFee } from '../../src/domain/fees/read-buy-fee.ts';
import { formatMoney } from '../../src/domain/money/format-money.ts';
import { parseMoney } from '../../src/domain/money/parse-money.ts';
import { startingSetup } from '../../src/domain/setup/starting-setup.ts';
import { zone } from '../../src/domain/time/zone.ts';
import { firstResult } from '../../src/views/start/first-draft.ts';
import { AXE, violations } from './axe.ts';
import { useBrowser } from './drivers/use-browser.ts';

const browser = useBrowser('America/Boise');

/** As for all screens: each browser has one of the two looks judged. */
const JUDGED = { chromium: { width: 1280, dark: false }, firefox: { width: 400, dark: true } } as const;
const FEES = '$0 - $4,999.99  $200\n$5,000 - $14,999.99  3%\n$15,000 and up  $475';
const ANSWERS = [
  ['Who uses this browser', 'The buyer'],
  ['Name of the venue', 'Saltgrass, west yard'],
  ['Buy fees at this venue', FEES],
  ['Transport, per car', '780'],
  ['Car', '2021 Larkspur Lone Hauler'],
  ['Likely retail', '20,000'],
  ['Recon', '900'],
] as const;

test('ten clicks lead from nothing to the right max bid, and no figure is shown before it is right', async () => {
  const page = await browser.open('options-page/index.html#/start');
  await page.until(() => document.querySelector('.start-page'));
  const judged = JUDGED[browser.name];
  await page.addProgram(AXE);
  await page.resize(judged.width, 800);
  await page.showAs({ dark: judged.dark });
  expect(await violations(page)).toEqual([]);
  expect(await page.run(() => document.documentElement.scrollWidth - innerWidth)).toBeLessThanOrEqual(0);
  let clicks = 0;
  const figure = () => page.run(() => document.querySelector('.start-result .figure-large')?.textContent ?? null);
  for (const [field, text] of ANSWERS) {
    expect(await figure(), `before ${field}`).toBeNull();
    // A user who never uses the tab key.
    clicks += 1;
    await page.click({ field });
    await page.fill({ field }, text);
  }
  await page.press('Tab');
  await page.until(() => document.querySelector('.start-result .figure-large'));
  const shown = await figure();
  clicks += 1;
  await page.click({ button: 'Save and go on' });
  await page.until(() => document.querySelector('.worksheet-stop .figure-large'));
  expect(await page.text('.worksheet-stop .figure-large')).toBe(shown);
  expect(clicks).toBeLessThanOrEqual(10);

  const boise = zone('America/Boise');
  const dollars = (text: string) => {
    const read = parseMoney(text);
    if (!read.ok) throw new Error(read.message);
    return read.value;
  };
  const setup = startingSetup(boise);
  const { maxBid } = firstResult(
    {
      zone: boise,
      venueName: 'Saltgrass, west yard',
      venueZone: boise,
      bands: readBuyFee(FEES).bands.map(({ band }) => band),
      step: dollars('100'),
      transport: dollars('780'),
      profit: setup.rules.dollarsCents,
      lossChance: setup.rules.lossChancePpm,
      car: '2021 Larkspur Lone Hauler',
      titleId: 'clean',
      retail: dollars('20,000'),
      recon: dollars('900'),
    },
    setup,
    { venue: 'v', fees: 'f' },
  );
  expect(maxBid && formatMoney(maxBid)).toBe(shown);
  // By hand: 20,000 less 900 recon, 780 transport, 475 fee and 1,500 profit leaves 16,345 before holding and risk.
  expect(maxBid).toBeLessThan(dollars('16,345'));
  expect(maxBid).toBeGreaterThan(dollars('14,500'));
  // The question of who uses the browser was answered with the rest.
  expect(await page.run(() => document.body.textContent?.includes('Who uses this browser'))).toBe(false);
});

test('the demo stands beside the first lot, and one press leaves nothing of it behind', async () => {
  const page = await browser.open('options-page/index.html?demo#/demo-load');
  await page.until(() => document.querySelectorAll('.lot-row').length > 3);
  await page.sees('Your own lots are not touched');
  expect(await page.run(() => document.body.textContent?.includes('2021 Larkspur Lone Hauler'))).toBe(false);
  await page.click({ button: 'Leave the demo' });
  await page.until(() => document.querySelectorAll('.lot-row').length === 1);
  await page.sees('2021 Larkspur Lone Hauler');
  expect(await page.url()).not.toContain('demo');
  expect(await page.run(async () => (await indexedDB.databases()).map(({ name }) => name))).toEqual(['headroom']);
});
