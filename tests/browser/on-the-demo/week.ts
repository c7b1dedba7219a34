import { expect, test } from 'vitest';
import { comingSaturday } from '../../../src/demo/demo-closes.ts';
import { instant } from '../../../src/domain/time/instant.ts';
import { dateIn } from '../../../src/domain/time/wall-clock.ts';
import { zone } from '../../../src/domain/time/zone.ts';
import { readCalendar } from '../../domain/calendar/read-calendar.ts';
import { goTo } from '../demo.ts';
import type { Browser } from '../drivers/browser.ts';

/** The week of the demo, by keyboard, as a calendar and on paper. */
export function week(browser: Browser): void {
  test('the week is walked by keyboard: one stop, arrows from mark to mark, Enter opens the worksheet', async () => {
    const page = await browser.pageAt('options-page/index.html');
    await page.resize(1280, 900);
    // The demo's busy Saturday may be next week's.
    await goTo(page, `#/week/of/${comingSaturday(instant(Date.now()))}`);
    await page.until(() => document.querySelectorAll('fieldset .time-mark').length > 3);
    expect(await page.count('fieldset .time-mark[tabindex="0"]')).toBe(1);
    const first = await page.run(() => {
      const stop = document.querySelector<HTMLElement>('fieldset .time-mark[tabindex="0"]');
      stop?.focus();
      return stop?.dataset.mark;
    });
    await page.press('ArrowRight');
    const second = await page.run(() => (document.activeElement as HTMLElement | null)?.dataset.mark);
    expect(second).not.toBe(first);
    const name = await page.until(() => {
      const label = document.activeElement?.getAttribute('aria-label') ?? '';
      return label.includes('worked out') ? null : label;
    });
    expect(name).toMatch(/^\w{3} \w{3} \d+, \d+:\d\d [AP]M · .+ · .+ · .+/);
    expect(await page.text('.time-reading')).toBe(name);
    await page.press('Enter');
    await page.until((id) => location.hash === `#/lot/${id}` && document.querySelector('.worksheet'), second);
  });

  test('a calendar file of the week is read by another program, and one saved after a change updates it', async () => {
    const page = await browser.pageAt('options-page/index.html');
    const save = async () => {
      await page.until(() => document.querySelectorAll('fieldset .time-mark').length > 3);
      return page.download(() => page.click({ button: 'Save for your calendar' }));
    };
    await page.run(() => history.back());
    const before = await save();
    expect(before.name).toMatch(/^closings-week-of-\d{4}-\d\d-\d\d\.ics$/);
    const events = readCalendar(before.text);
    expect(events.length).toBeGreaterThan(20);
    expect(new Set(events.map(({ uid }) => uid)).size).toBe(events.length);
    // A lot that still has room, so that nothing is asked when its proxy is placed at the max bid.
    const [moved] = events.filter(
      ({ alarms, description }) => alarms.length > 0 && /Stop at \$[\d,]+\. No proxy/.test(description ?? ''),
    );
    const id = moved?.uid.replace('headroom-lot-', '') ?? '';
    await goTo(page, `#/lot/${id}`);
    await page.until(() => document.querySelector('.stairs'));
    const max = await page.text('.worksheet-stop .figure-large');
    await page.fill({ field: 'Proxy placed' }, max);
    await page.press('Enter');
    await page.until((figure) => {
      if (document.querySelector('.worksheet-stop')?.textContent?.includes(`Placed ${figure}`)) return true;
      // The plan may bid less than the max bid by now, and asks.
      const ignore = [...document.querySelectorAll('button')].find((one) => one.textContent?.startsWith('Yes, ignore'));
      ignore?.click();
      return false;
    }, max);
    await page.run(() => history.back());
    const after = readCalendar((await save()).text);
    expect(after.map(({ uid }) => uid).sort()).toEqual(events.map(({ uid }) => uid).sort());
    const now = after.find(({ uid }) => uid === moved?.uid);
    expect(now?.sequence).toBeGreaterThan(moved?.sequence ?? 0);
    expect(now?.description).toContain(`Placed ${max}`);
  });

  test('on the day itself a line across the list says where now is', async () => {
    const page = await browser.pageAt('options-page/index.html');
    await page.resize(1280, 900);
    await goTo(page, `#/week/${dateIn(zone('America/Boise'), instant(Date.now()))}`);
    const widths = await page.until(() => {
      const line = document.querySelector<HTMLElement>('.day-edge.at-now th');
      return line && { line: line.offsetWidth, list: line.closest('table')?.offsetWidth ?? Number.NaN };
    });
    expect(widths.line).toBeGreaterThan(0.8 * widths.list);
    await page.run(() => history.back());
    await page.until(() => document.querySelector('.week-head a'));
  });

  test('the day sheet prints in black on white: closes in order, boxes to fill in, the buyer’s number, no controls', async () => {
    const page = await browser.pageAt('options-page/index.html');
    // The Saturday, which has twenty closings, and from the evening before on some of those that close in the next hours.
    const closings = await page.run(() => {
      const count = (link: HTMLAnchorElement) =>
        Number.parseInt(link.closest('.time-head')?.querySelector('.week-counts')?.textContent ?? '0', 10);
      const links = [...document.querySelectorAll<HTMLAnchorElement>('.week-head a')];
      const crowded = links.reduce((most, link) => (count(link) > count(most) ? link : most));
      location.hash = crowded.hash;
      return count(crowded);
    });
    expect(closings).toBeGreaterThanOrEqual(20);
    await page.until((rows) => document.querySelectorAll('.day-row').length === rows, closings);
    // Every max bid has been worked out.
    await page.until(() =>
      [...document.querySelectorAll('.day-row .number')].every((cell) => !cell.textContent?.startsWith('…')),
    );
    for (const dark of [false, true]) {
      // With the plan's bids, which take a line of their own.
      await page.until(() => document.querySelector('.day-plan') !== null);
      // The width of a letter sheet between its margins.
      await page.resize(725, 960);
      await page.showAs({ print: true, dark });
      const printed = await page.run(() => ({
        paper: getComputedStyle(document.documentElement).backgroundColor,
        ink: getComputedStyle(document.querySelector('.day-time') ?? document.body).color,
        controls: [...document.querySelectorAll<HTMLElement>('nav, button, input, select, fieldset')].filter(
          (element) => element.getClientRects().length > 0,
        ).length,
        head: document.querySelector<HTMLElement>('.sheet-head')?.textContent,
        heads: getComputedStyle(document.querySelector('.day-list thead') ?? document.body).display,
        boxes: [...document.querySelectorAll<HTMLElement>('.day-result')].filter((box) =>
          box.textContent.includes('☐ won'),
        ).length,
        times: [...document.querySelectorAll<HTMLAnchorElement>('.day-row a')].map(({ dataset }) => dataset.time ?? ''),
        brackets: document.querySelectorAll('.day-bracket').length,
        edges: [...document.querySelectorAll<HTMLElement>('.day-edge th')].map(({ offsetWidth }) => offsetWidth),
        // Letter is 279 mm high, less the margins of 26 mm, at 96 px an inch.
        pages: (document.querySelector('main')?.scrollHeight ?? 0) / ((253 / 25.4) * 96),
        sideways: document.documentElement.scrollWidth - innerWidth,
      }));
      expect(printed).toMatchObject({
        paper: 'rgb(255, 255, 255)',
        ink: 'rgb(0, 0, 0)',
        controls: 0,
        heads: 'table-header-group',
        boxes: closings,
      });
      // A day of twenty fits one page.
      expect(printed.pages).toBeLessThanOrEqual(closings / 20);
      expect(printed.brackets).toBeGreaterThanOrEqual(3);
      expect(printed.head).toContain('Reach the buyer: The buyer’s cell');
      expect(printed.head).toContain('10:00 AM to 5:00 PM');
      // A line across the list goes across it, whatever its moment: the rush, and on the day itself now.
      expect(printed.edges.filter((width) => width < 600)).toEqual([]);
      expect(printed.edges.length).toBeGreaterThanOrEqual(2);
      expect(printed.times).toEqual([...printed.times].sort());
      expect(printed.sideways).toBeLessThanOrEqual(0);
    }
  });
}
