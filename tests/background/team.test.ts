import { beforeEach, expect, test } from 'vitest';
import type { LotId } from '../../src/domain/lot/lot.ts';
import { instant } from '../../src/domain/time/instant.ts';
import { MINUTE } from '../../src/domain/time/units.ts';
import { deviceIdSchema } from '../../src/journal/ids.ts';
import { subjectOfLot } from '../../src/journal/subject.ts';
import { NO_PROGRESS } from '../../src/store/connection/kept-team.ts';
import { openTeamStore } from '../../src/store/team/team-store.ts';
import { freshBrowser, testRandom, value } from '../store/open-test-store.ts';
import type { InventedBrowser } from './invented-browser.ts';
import { here, lot, running } from './saturday-acts.ts';

beforeEach(() => freshBrowser());

/** The manager's computer, and the buyer's somewhere else: in step until so many minutes ago. */
async function inTeam(browser: InventedBrowser, minutesAgo = 0, stopped: string | null = null): Promise<void> {
  const now = () => browser.wallClock();
  const store = value(await openTeamStore({ name: 'headroom', now, random: testRandom(3), channel: false }));
  const people = [
    { device: await store.device(), name: 'the manager', role: 'manager', isOut: false },
    { device: deviceIdSchema.parse('B000000000'), name: 'the buyer', role: 'buyer', isOut: false },
    { device: deviceIdSchema.parse('C000000000'), name: 'the lot attendant', role: 'buyer', isOut: true },
  ];
  const shown = { name: 'Cottonwood', addresses: [], state: 'in', role: 'manager', people, invitations: [] } as const;
  value(await store.keepTeam({ shown, secret: null }));
  const inStepAt = instant(now() - minutesAgo * MINUTE);
  const told = stopped === null ? null : { reason: 'no-connection', message: stopped };
  value(await store.noteProgress({ ...NO_PROGRESS, inStepAt, stopped: told }));
  store.close();
  await browser.wake();
}

/** A lot that closes in the afternoon, when the buyer is called first, a quarter of an hour before that. */
async function afternoon() {
  const { browser, ids } = await running('14:30', [lot('Hauler', '15:30')]);
  return { browser, id: ids[0] as LotId };
}

const kinds = (browser: InventedBrowser) => [...browser.notices.keys()].map((id) => id.split('-')[0]);

test('the manager hears nothing while the buyer is called, is called at the last call, and a notice goes when the buyer has it', async () => {
  const { browser, id } = await afternoon();
  browser.notices.clear();
  browser.time = here('15:15');
  await inTeam(browser);
  expect(kinds(browser)).toEqual([]);
  browser.time = here('15:25');
  await inTeam(browser);
  expect(kinds(browser)).toEqual(['lot']);
  const store = await browser.store();
  const kind = 'handed-over' as const;
  value(await store.append([{ subject: subjectOfLot(id), happening: { kind, to: 'the buyer', taken: true } }]));
  store.close();
  await browser.wake();
  expect(kinds(browser)).toEqual([]);
});

test('a computer that has not heard from its team calls its user, as if there were none', async () => {
  for (const [minutes, stopped] of [
    [11, null],
    [0, 'The server does not answer.'],
  ] as const) {
    freshBrowser();
    const { browser } = await afternoon();
    browser.notices.clear();
    browser.time = here('15:15');
    await inTeam(browser, minutes, stopped);
    expect(kinds(browser)).toEqual(['soon']);
  }
});

test('“I have it” on a notice is kept with the name, and the lot is called at this computer from then on', async () => {
  const { browser, id } = await afternoon();
  browser.time = here('15:25');
  await inTeam(browser);
  const [notice = ''] = browser.notices.keys();
  expect(browser.notices.get(notice)?.buttons[0]).toBe('I have it');
  await browser.press(notice, 0);
  const store = await browser.store();
  expect((await store.lot(id))?.clock?.handedTo).toMatchObject({ to: 'the manager', taken: true });
  store.close();
});
