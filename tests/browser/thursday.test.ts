import { expect, test } from 'vitest';
import { DEMO_ZONE, demoSetup } from '../../src/demo/demo-setup.ts';
import { fitsCar } from '../../src/domain/setup/recon-template.ts';
import { instant } from '../../src/domain/time/instant.ts';
import { dateIn } from '../../src/domain/time/wall-clock.ts';
import { templateSum } from '../../src/views/lots/recon-offers.ts';
import { Hand } from './days/hand.ts';
import { openDayTab } from './days/open-day.ts';
import { thursdayLots } from './days/thursday-lots.ts';
import type { Page } from './drivers/browser.ts';
import { useBrowser } from './drivers/use-browser.ts';

const browser = useBrowser('America/Boise');
const LIST = 'options-page/index.html#/lots';

const show = (key: string) => `[data-show="${key}"]`;
const row = (number: string) => `.lot-row:has([aria-label$=", lot ${number}"])`;
const box = (number: string) => `${row(number)} [data-press="choose"]`;
const word = (number: string) => `${row(number)} [data-press="open"]`;

/** Waits until the button that cuts the list down says so many lots. */
const counts = (page: Page, wanted: Readonly<Record<string, number>>) =>
  page.until((all) => {
    const said = (key: string) => document.querySelector(`[data-show="${key}"] .list-shows-count`)?.textContent;
    return Object.entries(all).every(([key, many]) => said(key) === String(many));
  }, wanted);
const rowsShown = (page: Page, many: number) =>
  page.until((wanted) => document.querySelector('.list-count')?.textContent?.startsWith(`${wanted} of `), many);
/** The numbers of the lots in sight whose word opens such a panel, from the top. */
const numbersInSight = (page: Page) =>
  page.run(() =>
    [...document.querySelectorAll<HTMLElement>('.lot-row')]
      .sort((a, b) => Number(a.dataset.row) - Number(b.dataset.row))
      .map(
        (one) => /lot (\d+)$/.exec(one.querySelector('[data-press="choose"]')?.getAttribute('aria-label') ?? '')?.[1],
      )
      .filter((one) => one !== undefined),
  );

/** Runs in the page until it is true: whether a row is there, scrolling on while it is not. */
function scrolledTo(css: string): boolean {
  const list = document.querySelector('.lot-scroll');
  if (document.querySelector(css) !== null || list === null) return document.querySelector(css) !== null;
  const atEnd = list.scrollTop + list.clientHeight >= list.scrollHeight - 1;
  list.scrollTop = atEnd ? 0 : list.scrollTop + list.clientHeight / 2;
  return false;
}

test('sixty lots on a Thursday, at a desk: every goal within its presses', async () => {
  const setup = demoSetup(dateIn(DEMO_ZONE, instant(Date.now())));
  const day = await openDayTab(browser);
  await day.run((...args) => window.dayProgram.fill(...args), setup, thursdayLots(setup, Date.now()));
  const page = await browser.open(LIST);
  await page.resize(1280, 800);
  const hand = new Hand(page);
  await page.until(() => document.querySelector('.who-asks') && document.querySelectorAll('.lot-row').length > 8);
  const toPlace = thursdayLots(setup, Date.now())
    .slice(0, 20)
    .map(({ facts }) => facts.lotNumber ?? '');
  const inSight = await page.run(() => {
    const list = document.querySelector('.lot-scroll')?.getBoundingClientRect();
    const inside = ({ top, bottom }: DOMRect) => list !== undefined && top >= list.top && bottom <= list.bottom + 1;
    return [...document.querySelectorAll('.lot-row')].filter((one) => inside(one.getBoundingClientRect())).length;
  });
  expect(inSight).toBeGreaterThanOrEqual(12);

  await hand.goal('T1', 'say who you are', 2, async () => {
    await hand.fill({ field: 'Who uses this browser?' }, 'buyer');
    await hand.press('Enter');
    await page.until(() => document.querySelector('.who-asks') === null);
  });

  await hand.goal('T2', 'see what wants doing', 0, async () => {
    await counts(page, { open: 60, unplaced: 20, outbid: 4, 'over-max': 2, 'no-venue': 8, 'no-retail': 6 });
    await counts(page, { placed: 12, 'no-room': 8 });
  });

  await hand.goal('T3', 'set the venue of eight', 6, async () => {
    await hand.click(show('no-venue'));
    await rowsShown(page, 8);
    await hand.click('[aria-label="Choose all lots that are shown"]');
    await hand.click({ button: 'Set venue' });
    await hand.choose({ field: 'Venue' }, setup.venues[0]?.name ?? '');
    await counts(page, { 'no-venue': 0, unplaced: 28 });
  });

  await hand.goal('T4', 'enter retail for six', 18, async () => {
    await hand.click(show('no-retail'));
    await rowsShown(page, 6);
    const [first = ''] = await numbersInSight(page);
    await hand.click(word(first));
    for (let left = 5; left >= 0; left--) {
      await page.until(() => document.activeElement?.closest('.row-panel'));
      await hand.fill({ field: 'Retail estimate, likely' }, '24,500');
      await hand.press('Enter');
      await rowsShown(page, left);
    }
  });

  await hand.goal('T5', 'find lot 427, open it and go back', 4, async () => {
    await hand.click(show('open'));
    await hand.fill('.list-search', 'lot 427');
    await rowsShown(page, 1);
    await hand.click(`${row('427')} .lot-name`);
    await page.until(() => document.querySelector('.worksheet-head'));
    await hand.click({ link: 'Back to the lots' });
    await rowsShown(page, 1);
    expect(await page.run(() => document.querySelector<HTMLInputElement>('.list-search')?.value)).toBe('lot 427');
    await page.fill('.list-search', '');
  });

  await hand.goal('T6', 'narrow and walk', 8, async () => {
    await hand.click(show('unplaced'));
    await hand.click({ button: 'By venue' });
    await hand.click({ button: 'Headroom' });
    await page.until(() => document.querySelectorAll('.venue-row').length > 0);
    const rows = Number(await page.text(`${show('unplaced')} .list-shows-count`));
    await rowsShown(page, rows);
    const numbers = await numbersInSight(page);
    await hand.click(`${row(numbers[2] ?? '')} .lot-name`);
    await page.until(() => document.querySelector('.worksheet-head'));
    await hand.click({ link: 'Next lot' });
    await page.sees(`lot ${numbers[3]}`);
    await hand.click({ link: 'Previous lot' });
    await page.sees(`lot ${numbers[2]}`);
    await hand.click({ link: 'Back to the lots' });
    await rowsShown(page, rows);
    expect(await numbersInSight(page)).toEqual(numbers);
    await page.click({ button: 'By venue' });
  });

  await hand.goal('T7', 'say that twenty proxies are placed at max', 25, async () => {
    // One of them is passed meanwhile, and then it is named instead of noted.
    for (const number of toPlace) {
      await page.until(scrolledTo, row(number));
      await hand.click(box(number));
    }
    await hand.click({ button: 'I placed these at max' });
    await day.run((...args) => window.dayProgram.seePrice(...args), '427', 6400);
    await page.until(() => document.querySelector('.bulk-panel .left-out'));
    await hand.click({ button: 'Yes, note all 19' });
    await page.sees('19 proxies at max noted.');
    await page.sees('1 lot was left out:');
    const placed = await day.run((...args) => window.dayProgram.placedSince(...args), 2);
    expect(placed).toEqual(toPlace.filter((number) => number !== '427').sort());
  });

  await hand.goal('T8', 'compare three vans', 5, async () => {
    await page.click(show('open'));
    await page.click({ button: 'Clear' });
    for (const number of ['431', '438', '445']) {
      await page.until(scrolledTo, row(number));
      await hand.click(box(number));
    }
    await hand.click({ button: 'Compare' });
    await page.sees('Compare 3 lots');
    expect(await page.count('.compare thead th')).toBe(3);
    await hand.click({ button: 'Back to the list' });
    await rowsShown(page, 60);
    await page.click({ button: 'Clear' });
  });

  await hand.goal('T9', 'add recon to five vans', 8, async () => {
    await page.click(show('open'));
    const [template] = setup.reconTemplates ?? [];
    if (template === undefined) throw new Error('the invented setup has no template');
    const vans = thursdayLots(setup, Date.now())
      .filter(({ facts }) => fitsCar(template, facts))
      .slice(0, 5)
      .map(({ facts }) => facts.lotNumber ?? '');
    for (const number of vans) {
      await page.until(scrolledTo, row(number));
      await hand.click(box(number));
    }
    await hand.click({ button: 'Add recon' });
    await hand.click({ button: `${template.name}, ${templateSum(template)}` });
    await page.sees(`5 lots: ${template.name}: 4 lines added.`);
    await page.click({ button: 'Undo' });
  });

  await hand.goal('T10', 'stop watching four lots', 6, async () => {
    await page.click(show('no-room'));
    const four = (await numbersInSight(page)).slice(0, 4);
    for (const number of four) await hand.click(box(number ?? ''));
    await hand.click({ button: 'Stop watching' });
    await page.sees('4 lots removed from your list.');
    await page.click({ button: 'Undo' });
    await page.until((css) => document.querySelector(css), row(four[0] ?? ''));
  });

  await hand.goal('T13', 'answer four that are outbid', 5, async () => {
    await hand.click(show('outbid'));
    for (let left = 4; left > 0; left--) {
      await rowsShown(page, left);
      await hand.tap('.lot-row [data-press="offer"]');
    }
    await rowsShown(page, 0);
  });

  await hand.goal('T12', 'place one over max, with the reason', 5, async () => {
    await page.click(show('unplaced'));
    const [number = ''] = await numbersInSight(page);
    await hand.click(word(number));
    await hand.fill({ field: 'Your proxy' }, '30,000');
    await hand.press('Enter');
    await page.until(() => document.activeElement?.closest('.ask-box'));
    await hand.fill({ field: 'Why' }, 'A customer waits for it');
    await hand.press('Enter');
    await page.click(show('over-max'));
    await rowsShown(page, 3);
    await page.sees('Placed $30,000');
  });

  await hand.goal('T14', 'answer two that are over max', 4, async () => {
    await hand.tap('.lot-row:has(.lot-word.act) [data-press="offer"]');
    await rowsShown(page, 2);
    await hand.click('.lot-row .lot-word.act');
    await page.until(() => document.activeElement?.closest('.ask-box'));
    await hand.fill({ field: 'Why' }, 'The car is sold already');
    await hand.press('Enter');
    await page.until(() => document.querySelector('.row-panel, .lot-word.act') === null);
  });
  console.log(hand.table());
});
