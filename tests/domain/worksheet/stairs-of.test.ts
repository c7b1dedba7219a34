import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Line, LineGroup } from '../../../src/domain/deal/price-breakdown.ts';
import { cents } from '../../../src/domain/money/cents.ts';
import { stairsOf } from '../../../src/domain/worksheet/stairs-of.ts';
import { walkOf } from '../../../src/domain/worksheet/walk-of.ts';
import { SETUP, sheetOf, van } from '../appraisal/lot-for-tests.ts';

const line = (group: LineGroup, amount: number, range?: [number, number]): Line => ({
  key: `${group}-${amount}`,
  group,
  label: group,
  cents: cents(amount),
  ...(range && { range: { low: cents(range[0]), high: cents(range[1]) } }),
});

describe('the stairs in flights', () => {
  test('stand in the order of the work, whatever order the lines come in', () => {
    const steps = [
      line('slack', 1),
      line('interest', 2),
      line('recon', 3),
      line('fee', 4),
      line('doubt', 5),
      line('pack', 6),
      line('title', 7),
      line('transport', 8),
      line('undone', 9),
    ];
    expect(stairsOf({ steps }).map(({ kind, steps: own }) => [kind, own.map(({ group }) => group)])).toEqual([
      ['value', ['title']],
      ['doubt', ['doubt']],
      ['recon', ['recon']],
      ['getting', ['fee', 'transport', 'undone']],
      ['holding', ['interest', 'pack']],
      ['profit', ['slack']],
    ]);
  });

  test('say the spread of the sum where several steps have one, with what is certain beside it', () => {
    const half = (likely: number) => ({ label: `Job ${likely}`, amount: { likely, high: likely }, chance: 500_000 });
    const recon = [...Array.from({ length: 10 }, () => half(100_00)), { label: 'Detail', amount: { likely: 50_00 } }];
    const sheet = sheetOf(van({ recon }), SETUP);
    const flight = stairsOf(walkOf(sheet), sheet.appraisal.risk?.costs).find(({ kind }) => kind === 'recon');
    // Ten of $100, each as likely as not, are seldom below three or above seven (binomial), and $50 is certain.
    expect(flight).toMatchObject({ cents: 550_00, range: { low: 350_00, high: 750_00 } });
  });

  test('say a spread only where it is known: two spreads do not add up', () => {
    const of = (...steps: Line[]) => stairsOf({ steps })[0];
    expect(of(line('recon', 500, [300, 900]), line('recon', 200))).toMatchObject({
      cents: 700,
      range: { low: 500, high: 1100 },
    });
    expect(of(line('recon', 500, [300, 900]), line('recon', 200, [100, 300]))).not.toHaveProperty('range');
    expect(of(line('recon', 200))).not.toHaveProperty('range');
    expect(of(line('slack', -500))?.cents).toBe(-500);
  });

  test('hold every step of a lot’s walk once, and come to the same max bid', () => {
    fc.assert(
      fc.property(
        fc.record({
          likely: fc.integer({ min: 100_000, max: 9_000_000 }),
          worthIfFalse: fc.integer({ min: 0, max: 900_000 }),
          recon: fc.array(fc.integer({ min: 0, max: 300_000 }), { maxLength: 4 }),
          titleId: fc.constantFrom('clean', 'flood'),
        }),
        ({ likely, worthIfFalse, recon, titleId }) => {
          const facts = {
            retail: { likely },
            claims: [{ about: 'drive', statement: 'Four-wheel drive', worthIfFalse }],
            recon: recon.map((amount, i) => ({ label: `Line ${i}`, amount: { likely: amount } })),
            titleId,
          };
          const walk = walkOf(sheetOf(van(facts), SETUP));
          const flights = stairsOf(walk);
          expect(flights.flatMap(({ steps }) => steps).toSorted(byKey)).toEqual(walk.steps.toSorted(byKey));
          expect(flights.reduce((left, flight) => left - flight.cents, walk.from.cents as number)).toBe(walk.to);
        },
      ),
      { numRuns: 40 },
    );
  });
});

const byKey = (a: Line, b: Line) => (a.key < b.key ? -1 : 1);
