import { beforeAll, describe, expect, test } from 'vitest';
import { inventedStore } from '../../../../scripts/learn/invented-store.ts';
import { evidenceOf } from '../../../../src/domain/learn/corrections/evidence.ts';
import { findingOf } from '../../../../src/domain/learn/corrections/finding.ts';
import type { TimedLot } from '../../../../src/domain/learn/corrections/win-outcomes.ts';
import type { Setup } from '../../../../src/domain/setup/setup.ts';
import { instant } from '../../../../src/domain/time/instant.ts';
import { DAY } from '../../../../src/domain/time/units.ts';
import { dateIn } from '../../../../src/domain/time/wall-clock.ts';
import { SETUP } from '../../../../src/journal/subject.ts';
import type { Store } from '../../../../src/store/store.ts';
import { foldersOf } from '../../../../src/views/books/folders-of.ts';
import { beliefsAtClose } from '../../../../src/views/learn/beliefs-at-close.ts';
import { timedLots } from '../../../../src/views/learn/corrections/timed-lots.ts';
import { contextsThen, pastLots } from '../../../../src/views/learn/past-lots.ts';
import { freshBrowser, openTestStore, testClock, value } from '../../../store/open-test-store.ts';
import { playInto } from './played-store.ts';

// A short store of one lot a week; it is its way through the journal that matters.
const invented = inventedStore({ recon: { Body: 1.5 } }, 21, 1);
const clock = testClock(0);
let store: Store;
let timed: readonly TimedLot[];

beforeAll(async () => {
  freshBrowser();
  store = await openTestStore({ now: clock.now });
  await playInto(store, clock, invented);
  clock.set(invented.now);
  timed = await read();
}, 60_000);

async function read(): Promise<readonly TimedLot[]> {
  const lots = await store.allLots();
  const books = await store.books();
  const today = dateIn(invented.setup.store.zone, invented.now);
  const { folders } = foldersOf(lots, books, new Map(), invented.setup, today);
  const { zone } = invented.setup.store;
  const beliefs = beliefsAtClose(await store.entriesOf(lots.map(({ id }) => id)));
  return timedLots(pastLots(lots, beliefs, folders, contextsThen(zone), today).past, lots, books, zone);
}

const recon = (lots: readonly TimedLot[], setup: Setup = invented.setup) =>
  findingOf('recon', { evidence: evidenceOf(lots, [], invented.now), setup, now: invented.now });

describe('evidence that comes from the journal', () => {
  test('is the evidence that went into it: as many wins, the same ratios of recon', () => {
    const won = (lots: readonly TimedLot[]) => lots.filter(({ past }) => past.happened.ended === 'won').length;
    expect(won(timed)).toBe(won(invented.lots));
    expect(won(timed)).toBeGreaterThan(12);
    const body = (lots: readonly TimedLot[]) => recon(lots).figures.find(({ label }) => label === 'Body')?.learned;
    expect(body(timed)?.cases).toBe(body(invented.lots)?.cases);
    expect(body(timed)?.value).toBeCloseTo(body(invented.lots)?.value ?? 0, 3);
  });

  test('knows when each thing was written down, not only when it happened', () => {
    const wins = timed.filter(({ past }) => past.happened.bought?.sold);
    expect(wins.length).toBeGreaterThan(5);
    for (const { past, known } of wins) {
      expect(known.ended).toBeGreaterThan(past.happened.at);
      expect(known.sold ?? 0).toBeGreaterThan(known.soldOn ?? Number.POSITIVE_INFINITY);
      expect(known.billed ?? 0).toBeGreaterThan(known.ended);
    }
  });

  test('is the same from plain forecasts, whatever was switched on since', async () => {
    const before = recon(timed);
    const set = before.value;
    clock.set(invented.now + DAY);
    const [entry] = value(await store.append([{ subject: SETUP, happening: { kind: 'corrections-switched', set } }]));
    const kept = await store.setup();
    expect(kept?.corrections?.recon).toEqual(set.recon);
    const after = recon(await read(), { ...invented.setup, corrections: kept?.corrections });
    expect(after.figures).toEqual(before.figures);
    // An undo takes the switch back, and nothing else.
    value(await store.undo(...(entry === undefined ? [] : [entry.id])));
    expect((await store.setup())?.corrections?.recon).toBeUndefined();
    expect((await store.setup())?.store).toEqual(invented.setup.store);
  });

  test('counts a sale from the day on which it was typed, and ages it from the day on which it sold', () => {
    const sold = timed.find(({ known }) => known.sold !== undefined);
    if (sold === undefined) throw new Error('some car sold');
    const typed = instant(invented.now - DAY);
    const late = [{ ...sold, known: { ...sold.known, sold: typed, billed: typed } }];
    const [case1] = evidenceOf(late, [], invented.now).retail;
    expect(case1?.at).toBe(typed);
    expect(case1?.on).toBe(sold.known.soldOn);
  });
});
