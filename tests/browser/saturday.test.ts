import { expect, test } from 'vitest';
import { DEMO_ZONE, demoSetup } from '../../src/demo/demo-setup.ts';
import { instant } from '../../src/domain/time/instant.ts';
import { dateIn } from '../../src/domain/time/wall-clock.ts';
import { Hand } from './days/hand.ts';
import { openDayTab } from './days/open-day.ts';
import { saturdayLots } from './days/saturday-lots.ts';
import type { Page } from './drivers/browser.ts';
import { useBrowser } from './drivers/use-browser.ts';

const browser = useBrowser('America/Boise');

/** The numbers of the lots in sight under a heading, from the top. */
const numbersUnder = (page: Page, heading: string) =>
  page.run((wanted) => {
    const part = [...document.querySelectorAll('.now section')].find((one) =>
      one.querySelector('h2')?.textContent?.startsWith(wanted),
    );
    return [...(part?.querySelectorAll('.now-name') ?? [])].map((one) => /^Lot (\d+)/.exec(one.textContent ?? '')?.[1]);
  }, heading);
const firstUnder = (page: Page, heading: string, number: string) =>
  page.until(
    (wanted, lot) => {
      const part = [...document.querySelectorAll('.now section')].find((one) =>
        one.querySelector('h2')?.textContent?.startsWith(wanted),
      );
      return part?.querySelector('.now-name')?.textContent?.startsWith(`Lot ${lot} `);
    },
    heading,
    number,
  );

/** Runs in the page: what is wrong with it for a thumb. */
function thumbFaults(): readonly string[] {
  const faults: string[] = [];
  const shown = (element: Element) => element.checkVisibility({ visibilityProperty: true });
  for (const button of document.querySelectorAll('.now button, .now summary, .toast button')) {
    const { width, height } = button.getBoundingClientRect();
    if (shown(button) && (width < 24 || height < 24)) faults.push(`small: ${button.textContent}`);
  }
  if (document.documentElement.scrollWidth > innerWidth) faults.push('the page scrolls sideways');
  const notice = document.querySelector('.toast')?.getBoundingClientRect();
  const list = document.querySelector('main')?.getBoundingClientRect();
  if (notice && list && notice.top < list.bottom - 1) faults.push('the notice covers the list');
  return faults;
}

test('a Saturday at noon, with one thumb: every goal within its taps', async () => {
  const setup = demoSetup(dateIn(DEMO_ZONE, instant(Date.now())));
  const day = await openDayTab(browser);
  await day.run((...args) => window.dayProgram.fill(...args), setup, saturdayLots(setup, Date.now()));
  const page = await browser.open('options-page/index.html#/now');
  await page.resize(400, 800);
  await page.fill({ field: 'Who uses this browser?' }, 'manager');
  await page.press('Enter');
  const hand = new Hand(page);
  const comfortable = async () => expect(await page.run(thumbFaults)).toEqual([]);

  await hand.goal('S1', 'see what is due, first what has closed', 1, async () => {
    await firstUnder(page, 'How did it end?', '480');
    expect(await numbersUnder(page, 'Within the hour')).toEqual(['473', '452', '459', '438', '431', '445']);
    expect(await numbersUnder(page, 'Later today')).toEqual(['466']);
    await page.sees('9 more close later');
    await comfortable();
  });

  await hand.goal('S2', 'say how 480 ended, with its price', 3, async () => {
    await hand.tap('.now-card summary');
    await hand.fill({ field: 'Hammer price' }, '11,300');
    await hand.tap({ button: 'Lost at $11,300' });
    await page.until(() => !document.body.textContent?.includes('How did it end?'));
  });

  await hand.goal('S3', '473: placed', 1, async () => {
    await hand.tap({ button: 'I placed $9,400' });
    await firstUnder(page, 'Within the hour', '452');
    await comfortable();
  });

  await hand.goal('S4', '452 is outbid: raised', 1, async () => {
    await page.sees('Outbid at $11,800');
    await hand.tap({ button: 'I raised it to $12,600' });
    await firstUnder(page, 'Within the hour', '459');
  });

  await hand.goal('S5', '459 is over max: cut', 1, async () => {
    await page.sees('Placed $14,000, $800 over max');
    await hand.tap({ button: 'I cut it to $13,200' });
    await firstUnder(page, 'Within the hour', '438');
  });

  await hand.goal('S6', '438: placed', 1, async () => {
    await hand.tap({ button: 'I placed $12,000' });
    await firstUnder(page, 'Within the hour', '473');
  });

  await hand.goal('S7', 'a price passes a proxy while nobody looks', 2, async () => {
    await page.sees('Placed $8,000');
    await day.run((...args) => window.dayProgram.seePrice(...args), '466', 8300);
    await firstUnder(page, 'Within the hour', '466');
    await page.sees('Outbid at $8,300');
    await hand.tap({ button: 'I raised it to $9,000' });
    await firstUnder(page, 'Within the hour', '473');
  });
  expect(await page.count('.now-quick')).toBe(0);

  await day.run((...args) => window.dayProgram.pass(...args), 61);
  await page.sees('How did these 6 end?');
  const rows = await page.run(() =>
    [...document.querySelectorAll('.now-card')].slice(0, 3).map((one) => ({
      lot: /^Lot (\d+)/.exec(one.querySelector('.now-name')?.textContent ?? '')?.[1] ?? '',
      whole:
        one.getBoundingClientRect().bottom <= (document.querySelector('main')?.getBoundingClientRect().bottom ?? 0),
    })),
  );
  expect(rows.map(({ lot }) => lot).sort()).toEqual(['431', '438', '445']);
  expect(rows.every(({ whole }) => whole)).toBe(true);
  const cardOf = (number: string) =>
    page.run((lot) => {
      const card = [...document.querySelectorAll('.now-card')].find((one) =>
        one.querySelector('.now-name')?.textContent?.startsWith(`Lot ${lot} `),
      );
      return `#${CSS.escape(card?.id ?? '')}`;
    }, number);
  const cards = { won: await cardOf('431'), lost: await cardOf('438'), notSold: await cardOf('445') };
  const begun = performance.now();
  await hand.goal('S8', 'three closings in one minute', 3, async () => {
    await hand.tap(`${cards.won} .now-quick button:first-child`);
    await page.until((css) => document.querySelector(css) === null, cards.won);
    await hand.tap(`${cards.lost} .now-quick button:nth-child(2)`);
    await page.until((css) => document.querySelector(css) === null, cards.lost);
    await hand.tap(`${cards.notSold} .now-quick button:nth-child(3)`);
    await page.until((css) => document.querySelector(css) === null, cards.notSold);
    await comfortable();
  });
  expect(performance.now() - begun).toBeLessThan(15_000);
  const kept = (number: string) => day.run((...args) => window.dayProgram.kept(...args), number);
  expect(await kept('431')).toMatchObject({ ended: '{"ended":"won","hammerCents":1340000}', author: 'manager' });
  expect((await kept('438')).ended).toBe('{"ended":"lost"}');

  await hand.goal('S10', 'the wrong tap, undone', 1, async () => {
    await hand.tap({ button: 'Undo' });
    await page.until((css) => document.querySelector(css), cards.notSold);
  });

  await hand.goal('S9', 'extended instead of a result', 2, async () => {
    await hand.tap(`${cards.notSold} summary`);
    await hand.tap(`${cards.notSold} .four button:last-child`);
    await firstUnder(page, 'Within the hour', '445');
  });

  await page.resize(320, 800);
  await comfortable();
  console.log(hand.table());
});
