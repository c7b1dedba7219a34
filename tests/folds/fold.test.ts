import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { CloseTime } from '../../src/domain/time/close-time.ts';
import { foldAlertsShown } from '../../src/folds/fold-alerts.ts';
import { foldBooks } from '../../src/folds/fold-books.ts';
import { foldLots } from '../../src/folds/fold-lots.ts';
import { foldSetup } from '../../src/folds/fold-setup.ts';
import type { Entry } from '../../src/journal/entry.ts';
import { HAPPENING_KINDS } from '../../src/journal/happening.ts';
import { readEntry } from '../../src/journal/read-entry.ts';
import { play, stepsOn, union } from './journal-arbitrary.ts';

const devicesOf = (entries: readonly Entry[]) => [...new Set(entries.map(({ device }) => device))].sort();

/** All that the journal says, in a form that can be compared. */
function everything(entries: readonly Entry[]): object {
  const lots = [...foldLots(entries)].sort(([a], [b]) => (a < b ? -1 : 1));
  const alerts = devicesOf(entries).map((device) =>
    [...foldAlertsShown(entries, device)].sort(([a], [b]) => (a < b ? -1 : 1)),
  );
  return { lots, setup: foldSetup(entries), alerts, books: foldBooks(entries) };
}

test('the journals made up here hold every kind of happening, each as it can be stored', () => {
  const seen = new Set<string>();
  fc.assert(
    fc.property(stepsOn(2), (steps) => {
      for (const entry of union(play(steps, 2))) {
        expect(readEntry(entry).as).toBe('known');
        seen.add(entry.happening.kind);
      }
    }),
    { seed: 1, numRuns: 100 },
  );
  expect(HAPPENING_KINDS.filter((kind) => !seen.has(kind))).toEqual([]);
});

test.each([1, 2, 3])('the entries of %i devices fold to the same in any order, and when some come twice', (devices) => {
  fc.assert(
    fc.property(
      stepsOn(devices).chain((steps) => {
        const all = union(play(steps, devices));
        const some = fc.subarray(all);
        return fc.tuple(fc.constant(all), fc.shuffledSubarray(all, { minLength: all.length }), some);
      }),
      ([all, shuffled, again]) => {
        expect(everything([...shuffled, ...again])).toEqual(everything(all));
      },
    ),
    { numRuns: 150 },
  );
});

test('merging devices pair by pair gives the same whichever pair is first', () => {
  fc.assert(
    fc.property(stepsOn(3), (steps) => {
      const [a = [], b = [], c = []] = play(steps, 3);
      const abc = everything(union([union([a, b]), c]));
      expect(everything(union([a, union([b, c])]))).toEqual(abc);
      expect(everything(union([union([c, a]), b]))).toEqual(abc);
    }),
    { numRuns: 100 },
  );
});

/** Straight from the definition: an entry counts when nothing that counts, and is later, undoes it. */
function counts(entry: Entry, all: readonly Entry[]): boolean {
  return !all.some(
    (other) =>
      other.happening.kind === 'undone' &&
      other.happening.entry === entry.id &&
      other.id > entry.id &&
      counts(other, all),
  );
}

test('each field has the value of the last entry that set or emptied it and was not undone', () => {
  fc.assert(
    fc.property(stepsOn(2), (steps) => {
      const all = union(play(steps, 2));
      const live = all.filter((entry) => counts(entry, all)).sort((a, b) => (a.id < b.id ? -1 : 1));
      const folded = foldLots(all);
      const born = live.flatMap((e) => (e.happening.kind === 'lots-added' ? e.happening.lots : []));
      expect([...folded.keys()].sort()).toEqual(born.map((lot) => lot.id).sort());
      for (const { id, facts } of born) {
        const about = live.filter((entry) => entry.subject === `lot:${id}`);
        const expected = new Map<string, unknown>(Object.entries(facts));
        for (const { happening } of about) {
          if (happening.kind === 'bid-noted') {
            const { action, cents } = happening.bid;
            if (action === 'proxy-withdrawn') expected.delete('proxy');
            else if (action !== 'live-bid') expected.set('proxy', cents);
          }
          const close = expected.get('close') as CloseTime | undefined;
          if (happening.kind === 'close-extended' && close?.instant === happening.from)
            expected.set('close', { ...close, instant: happening.from + happening.minutes * 60_000 });
          if (happening.kind !== 'lot-changed') continue;
          for (const field of happening.clear) expected.delete(field);
          for (const [field, value] of Object.entries(happening.set)) expected.set(field, value);
        }
        expect(folded.get(id)?.facts).toEqual(Object.fromEntries(expected));
        const results = about.flatMap(({ happening }) => (happening.kind === 'result-noted' ? [happening.result] : []));
        expect(folded.get(id)?.sale?.result?.result).toEqual(results.at(-1));
        expect(folded.get(id)?.dropped).toBe(about.some(({ happening }) => happening.kind === 'lot-dropped'));
      }
    }),
    { numRuns: 150 },
  );
});

test('a setup section follows the last entry that counts, and an alert the last one of the same browser', () => {
  fc.assert(
    fc.property(stepsOn(2), (steps) => {
      const all = union(play(steps, 2));
      const live = all.filter((entry) => counts(entry, all)).sort((a, b) => (a.id < b.id ? -1 : 1));
      const names = live.flatMap(({ happening: h }) =>
        h.kind === 'setup-changed' && h.set.store ? h.set.store.name : [],
      );
      expect(foldSetup(all)?.store?.name).toBe(names.at(-1));
      for (const own of devicesOf(all)) {
        const last = new Map<string, boolean>();
        for (const { happening: h, device } of live) {
          if (h.kind === 'clock-put-right') last.set(`clock-put-right ${h.showed} ${h.to}`, true);
          if ((h.kind === 'alerts-shown' || h.kind === 'alerts-voided') && device === own)
            for (const key of h.keys) last.set(key, h.kind === 'alerts-shown');
        }
        const keys = [...last].filter(([, shown]) => shown).map(([key]) => key);
        expect(new Set(foldAlertsShown(all, own).keys())).toEqual(new Set(keys));
      }
    }),
    { numRuns: 100 },
  );
});
