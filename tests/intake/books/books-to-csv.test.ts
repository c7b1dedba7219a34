import { readdirSync, readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import { parse } from 'csv-parse/sync';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { expectedPurchase } from '../../../src/domain/books/folder/expected.ts';
import { purchaseFolder } from '../../../src/domain/books/folder/folder.ts';
import { FOLDER_COLUMNS, LINE_COLUMNS, POSTING_COLUMNS, zoneColumn } from '../../../src/intake/books/books-columns.ts';
import { booksToCsv } from '../../../src/intake/books/books-to-csv.ts';
import { csvRow } from '../../../src/intake/csv/csv-row.ts';
import { unguardCell } from '../../../src/intake/csv/guard-cell.ts';
import { CONTEXT, day, dollars, FACTS } from '../../domain/books/folder-test-car.ts';
import { lotNumber } from '../../domain/books/random-car.ts';

const read = (text: string): string[][] => parse(text, { bom: true, relax_column_count: true });

describe('text that is written and read by an independent reader', () => {
  // csv-spectrum 2.0.0 (BSD-2): what its files hold, as JSON. Read in tests/reference; written here.
  const folder = join(dirname(createRequire(import.meta.url).resolve('csv-spectrum')), 'json');

  test.each(readdirSync(folder))('%s of the collection of awkward files comes back as it was', (name) => {
    const rows: Record<string, unknown>[] = [JSON.parse(readFileSync(join(folder, name), 'utf8'))].flat();
    const cells = rows.map((row) => Object.values(row).map(String));
    const text = cells.map((row) => csvRow(row.map((cell) => ({ text: cell, kind: 'text' })))).join('');
    expect(read(text).map((row) => row.map(unguardCell))).toEqual(cells);
  });

  test('whatever it is, it comes back, and no cell begins with what a spreadsheet runs', () => {
    // Lone halves of surrogate pairs are no text that a file can hold.
    const words = fc.string({ unit: 'grapheme', minLength: 1 });
    fc.assert(
      fc.property(fc.array(words, { minLength: 1, maxLength: 5 }), (texts) => {
        const [row = []] = read(csvRow(texts.map((text) => ({ text, kind: 'text' }))));
        expect(row.map(unguardCell)).toEqual(texts);
        expect(row.filter((cell) => /^[=+\-@\t\r\n]/.test(cell))).toEqual([]);
      }),
    );
  });
});

describe('the cars of a month', () => {
  const folder = purchaseFolder(
    {
      lot: lotNumber(1),
      facts: { ...FACTS, lotNumber: '007', trim: '=HYPERLINK("x")', venueName: 'Saguaro, the "yard"' },
      won: { hammer: dollars(9725), date: day('2026-11-28'), bidder: '+1 buyer' },
      expected: expectedPurchase(FACTS, CONTEXT, dollars(9725)),
      costs: [{ key: 'c', cost: 'fee', label: '-2*3', cents: dollars(-12.5), date: day('2026-11-28'), paid: 'owed' }],
      payments: [],
      floor: [],
      papers: [],
    },
    day('2026-12-01'),
  );
  const table = (text: string) => {
    const [head = [], ...rows] = read(text);
    return rows.map((row) => Object.fromEntries(head.map((name, i) => [name, row[i]])));
  };

  test('open safely: nothing runs, no zero is lost, amounts below zero stay numbers, days are year-month-day', () => {
    const text = booksToCsv([...FOLDER_COLUMNS, zoneColumn('America/Boise')], [folder]);
    expect(text.startsWith('\ufeff')).toBe(true);
    expect(text.replaceAll('\r\n', '').includes('\n')).toBe(false);
    expect(table(text)).toMatchObject([
      {
        'Lot number': "'007",
        'Won on': '2026-11-28',
        Zone: 'America/Boise',
        'Bought by': "'+1 buyer",
        Hammer: '9725.00',
        'Actual cost': '-12.50',
        'Still owed': '-12.50',
        'Sold for': '',
        Venue: 'Saguaro, the "yard"',
      },
    ]);
  });

  test('and their lines say what was expected, what was booked, and why they differ', () => {
    const rows = table(
      booksToCsv(
        LINE_COLUMNS,
        folder.lines.map((line) => ({ folder, line })),
      ),
    );
    expect(rows.find(({ Line }) => Line === 'Buy fee')).toMatchObject({
      Expected: '450.00',
      Actual: '',
      Why: 'No bill yet.',
    });
    expect(rows.find(({ Line }) => Line === "'-2*3")).toMatchObject({ Expected: '', Actual: '-12.50' });
  });
});

test('every column of every file says what it means, and no file has a heading twice', () => {
  for (const own of [FOLDER_COLUMNS, LINE_COLUMNS, POSTING_COLUMNS]) {
    const columns = [...own, zoneColumn('America/Boise')];
    expect(new Set(columns.map(({ heading }) => heading)).size).toBe(columns.length);
    for (const { heading, means } of columns) expect(means, heading).toMatch(/\w{4}.*\.$/);
  }
});
