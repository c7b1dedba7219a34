import { beforeEach, expect, test } from 'vitest';
import { alertRulesSchema } from '../../src/domain/setup/alert-rules.ts';
import { rushSchema } from '../../src/domain/setup/store.ts';
import { freshBrowser } from '../store/open-test-store.ts';
import { InventedBrowser } from './invented-browser.ts';
import { at, setUp } from './invented-saturday.ts';
import { changeSetup, here, lot, running } from './saturday-acts.ts';

beforeEach(() => freshBrowser());

const DUTY = rushSchema.parse({
  weekly: [
    { weekday: 'sat', from: '10:00', to: '12:00', who: 'the manager' },
    { weekday: 'sat', from: '12:00', to: '15:00', who: 'the salesperson' },
    { weekday: 'sat', from: '15:00', to: '17:00' },
  ],
});

test('from noon on the reminders carry the name of who is on duty by the plan, and none of the morning comes again', async () => {
  const { browser } = await running('11:30', [lot('First', '12:20'), lot('Second', '12:40'), lot('Third', '12:55')]);
  await changeSetup(browser, { rush: DUTY });
  await browser.run(here('12:01'));
  const from = browser.appeared.length;
  await browser.run(here('13:00'));
  const titles = browser.appeared.slice(from).map(({ notice }) => notice.title);
  const loud = browser.appeared.slice(from).filter(({ notice }) => notice.loudness === 'loud');
  expect(titles.filter((title) => !title.startsWith('the salesperson: '))).toEqual([]);
  for (const name of ['First', 'Second', 'Third'])
    expect(
      loud.some(({ notice }) => `${notice.title}${notice.body}`.match(new RegExp(`${name}.*\\$17,800`, 's'))),
    ).toBe(true);
});

test('the list of the evening before goes to who is on duty, and names what closes while nobody is', async () => {
  const closes = ['15:10', '15:40', '16:10', '16:40'];
  const browser = new InventedBrowser(at('2026-11-27', '18:50'));
  await setUp(browser, [lot('Noon', '12:10'), ...closes.map((close, i) => lot(`Late ${i}`, close))]);
  await changeSetup(browser, { rush: DUTY });
  await browser.run(at('2026-11-27', '19:10'));
  const digest = browser.appeared.map(({ notice }) => notice).find(({ title }) => title.includes('tomorrow'));
  expect(digest?.title).toMatch(/^the manager and the salesperson: /);
  expect(digest?.body).toContain('Nobody is on duty from 3:00 PM to 5:00 PM; then close 3:10 PM Late 0.');
  for (const i of closes.keys()) expect(digest?.body).toContain(`Late ${i}`);
  await browser.closedUntil(here('14:55'), true);
  await browser.run(here('16:45'));
  const loud = browser.appeared.filter(({ notice, at: when }) => notice.loudness === 'loud' && when > here('15:00'));
  for (const i of closes.keys())
    expect(
      loud.some(
        ({ notice }) => notice.title.startsWith('The store: ') && `${notice.title}${notice.body}`.includes(`Late ${i}`),
      ),
    ).toBe(true);
});

test('with two reminders an hour every last call comes, and what needs nobody waits on Now', async () => {
  const closes = ['13:10', '13:25', '13:40', '13:55'];
  const { browser } = await running('12:55', [
    ...closes.map((close, i) => lot(`Bare ${i}`, close)),
    { ...lot('Earlier', '12:58'), proxy: 900_000 as never },
  ]);
  await changeSetup(browser, {
    rush: rushSchema.parse({ weekly: [] }),
    alerts: alertRulesSchema.parse({ leadMinutes: [30, 10], hourlyMost: 2 }),
  });
  const from = browser.appeared.length;
  await browser.run(here('14:00'));
  const shown = browser.appeared.slice(from).map(({ notice }) => notice);
  const loud = shown.filter(({ loudness }) => loudness === 'loud');
  for (const i of closes.keys())
    expect(loud.some(({ title, body }) => `${title} ${body}`.match(new RegExp(`Bare ${i}.*\\$17,800`, 's')))).toBe(
      true,
    );
  expect(shown.length - loud.length).toBeLessThanOrEqual(2);
  expect(shown.some(({ title }) => title.includes('how did'))).toBe(false);
  const held = browser.memory.get('held-back') as readonly { title: string }[];
  expect(held.map(({ title }) => title).join()).toContain('how did');
  await browser.run(here('16:00'));
  expect(browser.appeared.some(({ notice }) => notice.title.includes('how did'))).toBe(true);
});
