import fc from 'fast-check';
import { expect, test } from 'vitest';
import { guessColumns } from '../../src/intake/columns/guess-columns.ts';
import { countPlan, type ImportPlan, importPlan } from '../../src/intake/import-plan.ts';
import { importQuestions } from '../../src/intake/import-questions.ts';
import { importResult } from '../../src/intake/import-result.ts';
import { openTable } from '../../src/intake/open-table.ts';
import { readInChunks } from '../../src/intake/read-in-chunks.ts';
import type { ReadContext } from '../../src/intake/rows/read-context.ts';
import { strayVin } from '../../src/intake/rows/stray-vin.ts';
import { isTotalsRow } from '../../src/intake/rows/totals-row.ts';
import { CONTEXT, NOW } from './intake-context.ts';

// Invented; the check digits are right by ISO 3779 and 49 CFR 565.15, as tests/reference/vin holds the check.
const [ONE, TWO] = ['1ZL3H4C21M0104471', '1ZL3H4C23M0104472'];

async function planOf(text: string, more: Partial<ReadContext> = {}): Promise<ImportPlan> {
  const table = openTable(text);
  if (!table.ok) throw new Error(table.message);
  const columns = guessColumns(table.value.headings, table.value.sample, CONTEXT);
  const chunks = readInChunks(table.value, columns, { ...CONTEXT, ...more });
  return importPlan(chunks, { now: NOW, existing: () => [] });
}

test('a name that Setup does not know is one question for all its rows, however it is written', async () => {
  const rows = Array.from(
    { length: 30 },
    (_, i) => `${i},Alder,${i % 2 === 0 ? 'Lakeside Online' : 'LAKESIDE ONLINE.'},Clean`,
  );
  const text = ['Lot number,Make,Venue,Title', ...rows, '99,Birch,Saguaro Flats,odd paper'].join('\n');
  const plan = await planOf(text);
  const questions = importQuestions(plan.rows, CONTEXT);
  expect(questions).toEqual([
    { about: 'venue', text: 'Lakeside Online', name: 'lakeside online', rows: 30 },
    { about: 'title', text: 'odd paper', name: 'odd paper', rows: 1 },
  ]);
  const meant = { venue: new Map([['lakeside online', 'saltmarsh']]), title: new Map([['odd paper', 'salvage']]) };
  const answered = await planOf(text, { meant });
  expect(importQuestions(answered.rows, CONTEXT)).toEqual([]);
  expect(answered.counts.withFaults).toBe(0);
  expect(answered.rows.map(({ reading }) => reading.facts.venueId)).toEqual([
    ...Array(30).fill('saltmarsh'),
    'saguaro',
  ]);
  expect(answered.rows.at(-1)?.reading.facts.titleId).toBe('salvage');
});

test('rows of totals are left out and counted, and no row that names a car is taken for one', async () => {
  const plan = await planOf(
    [
      'Lot number,Make,Price now',
      '1,Alder,9000',
      '2,Birch,8000',
      'Subtotal (2 lots),,17000',
      'Grand total:,,"$17,000"',
    ].join('\n'),
  );
  expect(plan.counts).toMatchObject({ rows: 4, add: 2, totals: 2, unusable: 0, withFaults: 0 });
  expect(importResult(plan.rows, 'file').add).toHaveLength(2);
  expect(isTotalsRow(['Total loss', 'Alder', '9000'])).toBe(false);
  expect(isTotalsRow(['Total loss', '9000'])).toBe(false);
  expect(isTotalsRow(['Total', ONE, '9000'])).toBe(false);
  expect(isTotalsRow(['', 'TOTAL', '', '12', '$1,200.50'])).toBe(true);
  expect(isTotalsRow(['Average', '48,100 mi', '9,000'])).toBe(true);
  fc.assert(
    fc.property(fc.array(fc.constantFrom('Alder', '9000', ONE, 'Total', 'blue')), (cells) => {
      if (cells.includes('Alder') || cells.includes(ONE)) expect(isTotalsRow(cells)).toBe(false);
    }),
  );
});

test('a column of VINs is the VINs whatever its heading, and so is one VIN among other words', async () => {
  for (const heading of ['Unit', 'Item no', 'Notes', 'Code', 'Car']) {
    const plan = await planOf([`${heading},Make`, `${ONE},Alder`, `${TWO},Birch`].join('\n'));
    expect(
      plan.rows.map(({ reading }) => reading.facts.vin),
      heading,
    ).toEqual([ONE, TWO]);
  }
  const plan = await planOf(
    ['Lot number,Make,Remarks', `1,Alder,one key (${ONE.toLowerCase()}) no spare`, '2,Birch,none'].join('\n'),
  );
  expect(plan.rows.map(({ reading }) => reading.facts.vin)).toEqual([ONE, undefined]);
  expect(plan.rows[0]?.reading.evidence.vin).toMatchObject({ sure: 'likely' });
  // Two cars in one row are nobody's to choose, and a wrong check digit is no VIN where nothing says that it should be one.
  expect(strayVin([`${ONE} or ${TWO}`])).toBeNull();
  expect(strayVin([ONE.replace('1M0', '2M0')])).toBeNull();
});

test('a VIN that is twice in a file is said: the same lot goes into one, and the same car in two sales can be left out', async () => {
  const head = 'Lot number,VIN,Venue,Price now';
  const text = [head, `1,${ONE},Saguaro Flats,9000`, `2,${ONE},Saguaro Flats,9100`, `3,${ONE},Saltmarsh Fleet,9200`];
  const plan = await planOf(text.join('\n'));
  expect(plan.counts).toMatchObject({ add: 2, repeated: 1, again: 1 });
  expect(plan.rows.map(({ seen }) => seen?.kind)).toEqual([undefined, 'in-file', 'in-file-again']);
  const left = plan.rows.map((row) => (row.seen?.kind === 'in-file-again' ? { ...row, action: 'skip' as const } : row));
  expect(countPlan(left, NOW)).toMatchObject({ add: 1, again: 1 });
  expect(importResult(left, 'file').add).toHaveLength(1);
});
