import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type LotId, lotIdSchema } from '../../../src/domain/lot/lot.ts';
import { cents } from '../../../src/domain/money/cents.ts';
import { startingSetup } from '../../../src/domain/setup/starting-setup.ts';
import { instant } from '../../../src/domain/time/instant.ts';
import { zone } from '../../../src/domain/time/zone.ts';
import { lotsBornIn } from '../../../src/folds/fold-lots.ts';
import { foldSetup } from '../../../src/folds/fold-setup.ts';
import { countingInOrder } from '../../../src/folds/undo.ts';
import type { Entry } from '../../../src/journal/entry.ts';
import { LOTS, SETUP, subjectOfLot } from '../../../src/journal/subject.ts';
import { believedAtClose } from '../../../src/views/learn/believed-at-close.ts';
import { setupsThen } from '../../../src/views/learn/setups-then.ts';
import { at, play, stepsOn, union } from '../../folds/journal-arbitrary.ts';
import { writer } from './writer.ts';

const LOT = lotIdSchema.parse('01J0000000000000000000000A');
const lot = subjectOfLot(LOT);
const retail = (likely: number) => ({
  kind: 'lot-changed' as const,
  set: { retail: { likely: cents(likely) } },
  clear: [],
  evidence: {},
});
const setup = (packCents: number) => ({
  kind: 'setup-changed' as const,
  set: { costs: { ...startingSetup(zone('America/Boise')).costs, packCents: cents(packCents) } },
});
const result = (ended: 'won' | 'lost', when: number, hammer = 1_000_000) => ({
  kind: 'result-noted' as const,
  result: { ended, hammerCents: cents(hammer) },
  at: instant(when),
});

/** What a whole journal says was believed of a lot. */
function believed(entries: readonly Entry[], id: LotId = LOT) {
  const arrival = entries.find(
    ({ happening }) => happening.kind === 'lots-added' && happening.lots.some((one) => one.id === id),
  );
  const born = arrival && lotsBornIn(arrival).find((one) => one.id === id);
  if (arrival === undefined || born === undefined) throw new Error('the lot never came in');
  const about = (subject: string) => entries.filter((entry) => entry.subject === subject);
  return believedAtClose(born, arrival.author, about(subjectOfLot(id)), setupsThen(about(SETUP)));
}

const arrives = {
  kind: 'lots-added' as const,
  source: 'typed' as const,
  lots: [{ id: LOT, facts: { retail: { likely: cents(1_800_000) } }, evidence: {} }],
};

describe('what was believed as a sale closed', () => {
  test('is what was written down up to the close, not what was entered before the result was noted', () => {
    const { write, entries } = writer();
    write(1000, 'The buyer', LOTS, arrives);
    write(2000, 'The manager', lot, retail(1_700_000));
    write(5000, 'The bookkeeper', lot, retail(1_200_000));
    write(6000, 'The manager', lot, result('won', 4000));
    const then = believed(entries());
    expect(then).toMatchObject({ at: 4000, late: false, estimator: 'The manager' });
    expect(then?.lot.facts.retail?.likely).toBe(1_700_000);
  });

  test('is not changed by a later undo, a later correction of the result or a later setup', () => {
    const { write, undo, entries } = writer();
    write(500, 'The buyer', SETUP, setup(10_000));
    write(1000, 'The buyer', LOTS, arrives);
    const changed = write(2000, 'The manager', lot, retail(1_700_000));
    write(4500, 'The manager', lot, result('won', 4000));
    undo(5000, changed);
    write(6000, 'The buyer', SETUP, setup(90_000));
    write(7000, 'The bookkeeper', lot, result('won', 4000, 990_000));
    const then = believed(entries());
    expect(then?.lot.facts.retail?.likely).toBe(1_700_000);
    expect(then?.setup?.costs?.packCents).toBe(10_000);
  });

  test('of a lot that came in after its close is what was known when its end was noted, and is late', () => {
    const { write, entries } = writer();
    write(5000, 'The buyer', LOTS, arrives);
    write(6000, 'The buyer', SETUP, setup(10_000));
    write(7000, 'The buyer', lot, result('lost', 4000));
    write(8000, 'The buyer', lot, retail(1_500_000));
    expect(believed(entries())).toMatchObject({
      late: true,
      estimator: 'The buyer',
      setup: { costs: { packCents: 10_000 } },
    });
    expect(believed(entries())?.lot.facts.retail?.likely).toBe(1_800_000);
  });

  test('is nothing while no end is noted, or once its only result was undone', () => {
    const { write, undo, entries } = writer();
    write(1000, 'The buyer', LOTS, arrives);
    expect(believed(entries())).toBeNull();
    undo(3000, write(2000, 'The buyer', lot, result('won', 2000)));
    expect(believed(entries())).toBeNull();
  });

  test('holds nothing that was written later, whatever the journal, and equals the fold of what was written by then', () => {
    fc.assert(
      fc.property(stepsOn(2, 60), fc.nat(8000), (steps, early) => {
        // Ends are noted up to some seconds after they were.
        const entries = union(play(steps, 2)).map(
          (entry): Entry =>
            entry.happening.kind === 'result-noted'
              ? { ...entry, happening: { ...entry.happening, at: instant(entry.at - (early % 8) * 500) } }
              : entry,
        );
        for (const id of new Set(countingInOrder(entries).flatMap((entry) => lotsBornIn(entry).map((one) => one.id)))) {
          const then = believed(entries, id);
          if (then === null || then.late) continue;
          const isResult = ({ happening, subject }: Entry) =>
            happening.kind === 'result-noted' && subject === subjectOfLot(id);
          const isUndo = ({ happening }: Entry) =>
            happening.kind === 'undone' && entries.some((one) => one.id === happening.entry && isResult(one));
          const byThen = entries.filter((entry) => entry.at <= then.at);
          const known = [...new Set([...byThen, ...entries.filter((entry) => isResult(entry) || isUndo(entry))])];
          expect(believed(known, id)).toEqual(then);
          expect(then.setup).toEqual(foldSetup(byThen.filter(({ subject }) => subject === SETUP)));
        }
      }),
      { numRuns: 200 },
    );
  });

  test('is found for every lot in one pass over its own entries and a halving of the setup’s', () => {
    const { write, entries } = writer();
    for (let n = 0; n < 2000; n++) write(1000 + n, 'The buyer', SETUP, setup(n));
    let looks = 0;
    const get = (of: Entry, key: keyof Entry) => {
      looks += 1;
      return of[key];
    };
    const counted = entries().map((entry) => new Proxy(entry, { get: (of, key) => get(of, key as keyof Entry) }));
    const setups = setupsThen(counted);
    looks = 0;
    for (let n = 0; n < 2000; n++) expect(setups.at(1000 + n)?.costs?.packCents).toBe(n);
    expect(looks).toBe(0);
    expect(setups.at(999)).toBeNull();
    expect(at(entries(), 0).at).toBe(1000);
  });
});
