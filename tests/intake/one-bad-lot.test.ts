import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { LotFacts } from '../../src/domain/lot/lot.ts';
import { guessColumns } from '../../src/intake/columns/guess-columns.ts';
import { lotsToCsv } from '../../src/intake/lots-to-csv.ts';
import { openTable } from '../../src/intake/open-table.ts';
import { readInChunks } from '../../src/intake/read-in-chunks.ts';
import { hostileFacts, poisoned } from '../domain/lot/hostile-facts.ts';
import { CONTEXT } from './intake-context.ts';

const GOOD = { lotNumber: 'L1', make: 'Larkspur', model: 'Hauler', priceNow: 950_000 } as LotFacts;

async function readBack(lots: readonly LotFacts[]): Promise<readonly LotFacts[]> {
  const text = [
    ...lotsToCsv(
      lots.map((facts) => ({ facts })),
      CONTEXT,
    ),
  ].join('');
  const table = openTable(text);
  if (!table.ok) throw new Error(table.message);
  const columns = guessColumns(table.value.headings, table.value.sample, CONTEXT);
  const facts: LotFacts[] = [];
  for await (const chunk of readInChunks(table.value, columns, CONTEXT)) facts.push(...chunk.map((row) => row.facts));
  return facts;
}

test('whatever one lot holds, the file has a row for it, and the other lot reads back as it was', async () => {
  await fc.assert(
    fc.asyncProperty(hostileFacts, async (facts) => {
      const back = await readBack([{ ...facts, lotNumber: 'L0' }, GOOD]);
      expect(back).toHaveLength(2);
      expect(back[1]).toEqual(GOOD);
    }),
    { numRuns: 100 },
  );
});

test('a lot that can’t be written out has a row that names it and says why', async () => {
  const [bad, good] = await readBack([poisoned({ ...GOOD, lotNumber: 'L0' }), GOOD]);
  expect(bad).toMatchObject({ lotNumber: 'L0', make: 'Larkspur' });
  expect(bad?.notes).toContain('Can’t be worked out: an amount came out as NaN cents');
  expect(good).toEqual(GOOD);
});

test('a row that no reader can read costs only itself', async () => {
  const table = openTable('Lot number,Make,Closes\nL0,Larkspur,torn\nL1,Alderman,2026-11-28 2:05 PM\n');
  if (!table.ok) throw new Error(table.message);
  const columns = guessColumns(table.value.headings, table.value.sample, CONTEXT);
  const readClose: typeof CONTEXT.readClose = (text, known) => {
    if (text === 'torn') throw new RangeError('no clock shows this');
    return CONTEXT.readClose(text, known);
  };
  const rows = [];
  for await (const chunk of readInChunks(table.value, columns, { ...CONTEXT, readClose })) rows.push(...chunk);
  expect(rows.map(({ row, usable }) => [row, usable])).toEqual([
    [2, false],
    [3, true],
  ]);
  expect(rows[0]?.faults[0]?.message).toContain('no clock shows this');
  expect(rows[1]?.facts.close).toBeDefined();
});
