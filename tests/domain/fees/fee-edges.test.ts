import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { feeDrops, feeEdges } from '../../../src/domain/fees/fee-edges.ts';
import { feeTableSchema } from '../../../src/domain/fees/fee-schedule.ts';
import { totalFees } from '../../../src/domain/fees/fees-at.ts';
import { feeTable } from '../deal/random-deal.ts';

const table = (...bands: object[]) => feeTableSchema.parse({ label: 'Buy fee', bands });

describe('the edges of fee tables', () => {
  test('carry the jump that the change of band alone makes, all tables together', () => {
    const buy = table(
      { fromCents: 0, flatCents: 100 },
      { fromCents: 1000, flatCents: 250 },
      { fromCents: 2000, ratePpm: 50_000 },
    );
    const online = table({ fromCents: 0, flatCents: 10 }, { fromCents: 1000, flatCents: 30 });
    expect(feeEdges([buy, online])).toEqual([
      { price: 1000, jump: 170 },
      { price: 2000, jump: -150 },
    ]);
    expect(feeDrops([buy, online])).toEqual([2000]);
  });

  test('where the bands join smoothly are no jump', () => {
    const smooth = table({ fromCents: 0, ratePpm: 100_000 }, { fromCents: 1000, flatCents: 50, ratePpm: 50_000 });
    expect(feeEdges([smooth])).toEqual([{ price: 1000, jump: 0 }]);
    expect(feeDrops([smooth])).toEqual([]);
  });

  test('between two drops no fee ever falls, cent by cent', () => {
    const small = feeTable.map((any) => ({
      ...any,
      bands: any.bands.map((band) => ({
        ...band,
        fromCents: Math.floor(band.fromCents / 1000) as typeof band.fromCents,
      })),
    }));
    fc.assert(
      fc.property(fc.array(small, { minLength: 1, maxLength: 2 }), (tables) => {
        const drops = new Set<number>(feeDrops(tables));
        const falls: number[] = [];
        let before = totalFees(0, tables);
        for (let price = 1; price < 1000; price++) {
          const fees = totalFees(price, tables);
          if (fees < before && !drops.has(price)) falls.push(price);
          before = fees;
        }
        expect(falls).toEqual([]);
      }),
      { numRuns: 200 },
    );
  });
});
