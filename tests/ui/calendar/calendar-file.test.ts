import { beforeEach, expect, test } from 'vitest';
import type { LotAct } from '../../../src/acts/act.ts';
import { demoSetup } from '../../../src/demo/demo-setup.ts';
import type { LotFacts, LotId } from '../../../src/domain/lot/lot.ts';
import { cents } from '../../../src/domain/money/cents.ts';
import type { CloseTime } from '../../../src/domain/time/close-time.ts';
import { instant } from '../../../src/domain/time/instant.ts';
import type { LocalDate } from '../../../src/domain/time/local-date.ts';
import { zone } from '../../../src/domain/time/zone.ts';
import type { Store } from '../../../src/store/store.ts';
import { calendarFile } from '../../../src/ui/calendar/calendar-file.ts';
import { doLotAct } from '../../../src/views/lots/do-lot-act.ts';
import { standingsUnder } from '../../../src/views/lots/standing.ts';
import { readCalendar } from '../../domain/calendar/read-calendar.ts';
import { freshBrowser, openTestStore, value } from '../../store/open-test-store.ts';

const SATURDAY = instant(Date.UTC(2026, 10, 28, 19, 5));
const MONDAY = instant(Date.UTC(2026, 10, 30, 17));
const WEEK = { from: instant(Date.UTC(2026, 10, 23, 7)), before: instant(Date.UTC(2026, 10, 30, 7)) };
const setup = demoSetup('2026-11-25' as LocalDate);

const closesAt = (at: number): CloseTime => ({
  instant: instant(at),
  text: '',
  zone: zone('America/Boise'),
  how: 'store-zone',
  doubts: [],
  otherwise: [],
});

let store: Store;
beforeEach(async () => {
  freshBrowser();
  store = await openTestStore();
  value(await store.saveSetup(setup));
});

async function add(facts: LotFacts): Promise<LotId> {
  const { lots } = value(await store.addLots('typed', [{ facts, evidence: {} }]));
  const [id] = lots;
  if (id === undefined) throw new Error('no lot was added');
  return id;
}

const exported = async (choice: Parameters<typeof calendarFile>[2] = WEEK) =>
  readCalendar(await value(await calendarFile(store, setup, choice)).blob.text());

test('an open lot has one alarm, so has a bid that can be raised, and the stop price stands first', async () => {
  await add({ year: 2021, make: 'Larkspur', venueId: 'saguaro', close: closesAt(SATURDAY), retail: estimate(31_900) });
  const merrow = { year: 2019, make: 'Merrow', venueId: 'saguaro', retail: estimate(31_900), proxy: cents(800_000) };
  await add({ ...merrow, close: closesAt(SATURDAY + 60_000) });
  const [open, placed] = await exported();
  expect(open?.summary).toMatch(/^Stop at \$[\d,]+ · 2021 Larkspur$/);
  expect(open?.alarms.map(([seconds]) => seconds / 60)).toEqual([-10]);
  expect(placed?.summary).toMatch(/^Stop at \$[\d,]+ · 2019 Merrow$/);
  expect(placed?.alarms.map(([seconds]) => seconds / 60)).toEqual([-10]);
  expect(placed?.description).toContain('Placed $8,000.');
});

test('a calendar rings at the last call that the lot itself has: its own, put off, handed over, extended, none once it is done', async () => {
  const id = await add({ make: 'Larkspur', venueId: 'saguaro', close: closesAt(SATURDAY) });
  let now = SATURDAY - 90 * 60_000;
  const does = async (wanted: LotAct) => {
    const lot = await store.lot(id);
    if (lot === null) throw new Error('the lot is gone');
    expect(
      (await doLotAct(store, lot, wanted, { setup, standings: standingsUnder(setup), now: instant(now) })).as,
    ).toBe('kept');
  };
  const rings = async () => {
    const [event, ...others] = await exported();
    expect(others).toEqual([]);
    return { ...event, before: event?.alarms.map(([seconds]) => seconds / 60) };
  };
  await does({ do: 'call-at', leadMinutes: [45, 10] });
  expect((await rings()).before).toEqual([-10]);
  now = SATURDAY - 25 * 60_000;
  await does({ do: 'put-off', minutes: 10 });
  expect((await rings()).before).toEqual([-15]);
  await does({ do: 'call-at', leadMinutes: null });
  await does({ do: 'hand-over', to: 'The closer' });
  const handed = await rings();
  expect(handed.before).toEqual([-15]);
  expect(handed.alarms?.[0]?.[1]).toContain(
    'closes in 15 min. No max bid yet. No proxy is placed yet. The closer has it.',
  );
  now = SATURDAY - 2 * 60_000;
  await does({ do: 'extended', minutes: 5, from: SATURDAY });
  const later = await rings();
  expect(later.at).toBe(SATURDAY + 5 * 60_000);
  expect(later.before).toEqual([-20]);
  await does({ do: 'done' });
  expect((await rings()).before).toEqual([]);
});

test('a second file updates the first: same UID, greater SEQUENCE after a change of the lot, the setup, or an undo', async () => {
  const id = await add({ make: 'Larkspur', close: closesAt(SATURDAY) });
  const sequences: number[] = [];
  const stamps: number[] = [];
  const look = async () => {
    const [event, ...others] = await exported();
    expect(others).toEqual([]);
    expect(event?.uid).toBe(`headroom-lot-${id}`);
    sequences.push(event?.sequence ?? 0);
    stamps.push(event?.stamp ?? 0);
    return event;
  };
  await look();
  const moved = value(await store.changeLot(id, { set: { close: closesAt(SATURDAY + 600_000) } }));
  expect((await look())?.at).toBe(SATURDAY + 600_000);
  const [entry] = moved;
  if (entry !== undefined) value(await store.undo(entry.id));
  expect((await look())?.at).toBe(SATURDAY);
  value(await store.saveSetup({ costs: { ...setup.costs, packCents: cents(99_900) } }));
  await look();
  for (const row of [sequences, stamps])
    row.forEach((each, i) => {
      if (i > 0) expect(each).toBeGreaterThan(row[i - 1] ?? 0);
    });
});

test('the file of an unchanged journal is the same file, whenever it is saved', async () => {
  await add({ make: 'Larkspur', close: closesAt(SATURDAY) });
  const text = async () => value(await calendarFile(store, setup, WEEK)).blob.text();
  expect(await text()).toBe(await text());
});

test('a lot that left the week is in its file again, at its new time; one that was never in it is not', async () => {
  const id = await add({ make: 'Larkspur', close: closesAt(SATURDAY) });
  await add({ make: 'Merrow', close: closesAt(MONDAY) });
  value(await store.changeLot(id, { set: { close: closesAt(MONDAY) } }));
  expect((await exported()).map(({ summary, at }) => [summary, at])).toEqual([['No max bid yet · Larkspur', MONDAY]]);
});

test('what no longer closes is struck out, without alarms: dropped, withdrawn, or its close taken away', async () => {
  const dropped = await add({ make: 'Larkspur', close: closesAt(SATURDAY) });
  const withdrawn = await add({ make: 'Merrow', close: closesAt(SATURDAY + 1000) });
  const cleared = await add({ make: 'Quillback', close: closesAt(SATURDAY + 2000) });
  const won = await add({ make: 'Ollerton', close: closesAt(SATURDAY + 3000) });
  value(await store.dropLot(dropped));
  value(await store.noteResult(withdrawn, { result: { ended: 'withdrawn' }, at: SATURDAY }));
  value(await store.changeLot(cleared, { clear: ['close'] }));
  value(await store.noteResult(won, { result: { ended: 'won', hammerCents: cents(900_000) }, at: SATURDAY }));
  const events = await exported();
  expect(events.map(({ status, summary }) => [status, summary])).toEqual([
    ['CANCELLED', 'Removed from the list · Larkspur'],
    ['CANCELLED', 'Withdrawn · Merrow'],
    ['CANCELLED', 'Close not known · Quillback'],
    ['CONFIRMED', 'Won · Ollerton'],
  ]);
  expect(events.flatMap(({ alarms }) => alarms)).toEqual([]);
});

test('a close in doubt is tentative and says so', async () => {
  await add({ make: 'Larkspur', close: { ...closesAt(SATURDAY), doubts: ['abbreviation'] } });
  const [event] = await exported();
  expect(event?.status).toBe('TENTATIVE');
  expect(event?.description).toContain('in doubt');
});

test('one lot alone, and nothing at all', async () => {
  const id = await add({ make: 'Larkspur', close: closesAt(SATURDAY) });
  await add({ make: 'Merrow', close: closesAt(SATURDAY) });
  expect((await exported({ lot: id })).map(({ uid }) => uid)).toEqual([`headroom-lot-${id}`]);
  const nothing = await calendarFile(store, setup, { from: MONDAY, before: instant(MONDAY + 1) });
  expect(nothing).toMatchObject({ ok: false, reason: 'nothing-closes' });
});

function estimate(dollars: number) {
  return { low: cents(dollars * 90), likely: cents(dollars * 100), high: cents(dollars * 110) };
}

test('an import that was undone cancels its events in the next file, and brings them back when it is done again', async () => {
  const rows = Array.from({ length: 25 }, (_, i) => ({
    facts: { make: 'Larkspur', lotNumber: String(100 + i), venueId: 'saguaro', close: closesAt(SATURDAY + i * 60_000) },
  }));
  const importAll = async () => value(await store.addLots('file', rows));
  const first = await importAll();
  const before = await exported();
  expect(before).toHaveLength(25);
  value(await store.undo(...first.entries));
  const cancelled = await exported();
  const uids = (events: typeof before) => events.map(({ uid }) => uid).sort();
  expect(uids(cancelled)).toEqual(uids(before));
  expect(new Set(cancelled.map(({ status }) => status))).toEqual(new Set(['CANCELLED']));
  expect(cancelled.flatMap(({ alarms }) => alarms)).toEqual([]);
  const sequences = (events: typeof before) => new Map(events.map(({ uid, sequence }) => [uid, sequence]));
  for (const [uid, sequence] of sequences(cancelled)) expect(sequence).toBeGreaterThan(sequences(before).get(uid) ?? 0);
  // A file of an earlier week cancels them too: nobody opens the weeks to come for lots that are gone.
  const earlier = { from: instant(WEEK.from - 7 * 86_400_000), before: WEEK.from };
  expect(uids(await exported(earlier))).toEqual(uids(before));

  await importAll();
  const again = await exported();
  expect(uids(again)).toEqual(uids(before));
  expect(new Set(again.map(({ status }) => status))).toEqual(new Set(['CONFIRMED']));
  for (const [uid, sequence] of sequences(again)) expect(sequence).toBeGreaterThan(sequences(cancelled).get(uid) ?? 0);
});

test('an undone import that is brought back by undoing the undo keeps its events, and the file goes on counting', async () => {
  const rows = [{ facts: { make: 'Larkspur', lotNumber: '7', venueId: 'saguaro', close: closesAt(SATURDAY) } }];
  const { entries } = value(await store.addLots('file', rows));
  const [undo] = value(await store.undo(...entries));
  const [cancelled] = await exported();
  if (undo === undefined) throw new Error('nothing was undone');
  value(await store.undo(undo.id));
  const [back, ...others] = await exported();
  expect(others).toEqual([]);
  expect(back).toMatchObject({ uid: cancelled?.uid, status: 'CONFIRMED' });
  expect(back?.sequence).toBeGreaterThan(cancelled?.sequence ?? 0);
});
