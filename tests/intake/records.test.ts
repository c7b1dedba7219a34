import { parse as parseElsewhere } from 'csv-parse/sync';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { sniffDialect } from '../../src/intake/csv/dialect.ts';
import { readRecords } from '../../src/intake/csv/records.ts';
import { processorSeconds } from './processor-time.ts';

const read = (text: string) => {
  const slices = [...readRecords(text, sniffDialect(text))];
  return {
    rows: slices.flatMap(({ records }) => records),
    problems: Object.fromEntries(slices.flatMap(({ problems }) => [...problems])),
  };
};
const rows = (text: string) => read(text).rows;

describe('rows and cells', () => {
  it.each([
    ['commas', 'a,b,c\n1,2,3'],
    ['tabs', 'a\tb\tc\n1\t2\t3'],
    ['semicolons', 'a;b;c\n1;2;3'],
    ['bars', 'a|b|c\n1|2|3'],
    ['CRLF', 'a,b,c\r\n1,2,3'],
    ['CR alone', 'a,b,c\r1,2,3'],
    ['a byte-order mark', '\ufeffa,b,c\n1,2,3'],
    ['a first line that states the delimiter', 'sep=;\r\na;b;c\r\n1;2;3'],
  ])('are split with %s', (_, text) => {
    expect(rows(text)).toEqual([
      ['a', 'b', 'c'],
      ['1', '2', '3'],
    ]);
  });

  it('are split by tabs although every cell has a comma', () => {
    expect(rows('12,345\t9,500\n45,210\t8,000\n1,000')).toEqual([['12,345', '9,500'], ['45,210', '8,000'], ['1,000']]);
  });

  it('lose no CR at the end of lines, whether all or only some have one', () => {
    expect(rows('a,"b"\r\n1,2\n3,"4"\r\n5,6\r\n')).toEqual([['a', 'b'], ['1', '2'], ['3', '4'], ['5', '6'], ['']]);
  });

  it('keep line breaks, delimiters and doubled quotes inside quotes', () => {
    expect(rows('a,b\r\n"x\r\ny, ""z""",2')).toEqual([
      ['a', 'b'],
      ['x\r\ny, "z"', '2'],
    ]);
  });

  it('count blank rows, as a spreadsheet does', () => {
    expect(rows('a,b\n\n1,2')).toEqual([['a', 'b'], [''], ['1', '2']]);
  });
});

describe('a quote mark that is not closed', () => {
  it('costs its own row its quoting and none of the rows after it', () => {
    const { rows, problems } = read('a,b\n1,"x\n2,y\n3,"z, z"\n4,w');
    expect(rows).toEqual([
      ['a', 'b'],
      ['1', '"x'],
      ['2', 'y'],
      ['3', 'z, z'],
      ['4', 'w'],
    ]);
    expect(problems).toEqual({ 2: expect.stringContaining('not closed') });
  });

  it('is kept when only a word of the cell is quoted', () => {
    const { rows, problems } = read('a,b\n1,"Hauler" 250\n2,"y"\n3,z');
    expect(rows).toEqual([
      ['a', 'b'],
      ['1', '"Hauler" 250'],
      ['2', 'y'],
      ['3', 'z'],
    ]);
    expect(Object.keys(problems)).toEqual(['2']);
  });

  it('can stand in a thousand rows without taking more than moments', () => {
    const start = processorSeconds();
    const lines = Array.from({ length: 20_000 }, (_, i) => `${i},"Hauler" ${i},"a, b"`);
    const { rows, problems } = read(['a,b,c', ...lines].join('\n'));
    expect(rows).toHaveLength(20_001);
    expect(Object.keys(problems)).toHaveLength(20_000);
    expect(processorSeconds() - start).toBeLessThan(10);
  });

  it('can run on to the end of the file from every row without being read to it each time', () => {
    const lines = Array.from({ length: 40_000 }, (_, i) => `${i},"Larkspur`);
    for (const end of ['', '\n0,"']) {
      const start = processorSeconds();
      const { rows } = read(['a,b', ...lines].join('\n') + end);
      expect(rows.slice(1, 40_001).map(([first]) => Number(first))).toEqual(lines.map((_, i) => i));
      expect(processorSeconds() - start).toBeLessThan(10);
    }
  });

  it('is given up on when a file is full of them, still without losing a character', () => {
    const lines = Array.from({ length: 1001 }, (_, i) => `${i},"x${'"'.repeat(i % 3)}`);
    const kept = read(['a,b', ...lines].join('\n'))
      .rows.flat()
      .join(' ');
    expect(kept.match(/\d+/g)?.map(Number)).toEqual(lines.map((_, i) => i));
  });
});

describe('rows of any size', () => {
  const cell = fc.string({ unit: fc.constantFrom('a', '1', ' ', ',', '"', '\n', '\r\n', ';', 'é'), maxLength: 12 });
  const quoted = (text: string) => `"${text.replaceAll('"', '""')}"`;

  it('come back as another parser reads them', () => {
    fc.assert(
      fc.property(
        fc.array(fc.array(cell, { minLength: 2, maxLength: 4 }), { minLength: 1, maxLength: 30 }),
        (table) => {
          const text = table.map((cells) => cells.map(quoted).join(',')).join('\r\n');
          const ours = [...readRecords(text, { delimiter: ',', newline: '\n', start: 0 })].flatMap((s) => s.records);
          expect(ours).toEqual(parseElsewhere(text, { relax_column_count: true, record_delimiter: '\r\n' }));
          expect(ours).toEqual(table);
        },
      ),
    );
  });

  it('are read across the borders of the slices', () => {
    const lines = Array.from({ length: 40_000 }, (_, i) => `${i},"two\nlines, ""${i}""",x`);
    const all = rows(['a,b,c', ...lines].join('\n'));
    expect(all).toHaveLength(40_001);
    expect(all.slice(1).every(([n, two], i) => n === String(i) && two === `two\nlines, "${i}"`)).toBe(true);
  });

  it('are numbered across the borders of the slices', () => {
    const text = `a,b\n${'1,2\n'.repeat(300_000)}`;
    const slices = [...readRecords(text, sniffDialect(text))];
    expect(slices.length).toBeGreaterThan(3);
    let next = 1;
    for (const { firstRow, records } of slices) {
      expect(firstRow).toBe(next);
      next += records.length;
    }
  });

  it('are read when one is megabytes long', () => {
    const start = processorSeconds();
    const wide = 'abcdefghi,'.repeat(400_000);
    const long = `"${'abcdefgh""'.repeat(400_000)}"`;
    const all = rows(`a,b\n${wide}\n${long},2\nlast,row`);
    expect(all.map((cells) => cells.length)).toEqual([2, 400_001, 2, 2]);
    expect(all[2]?.[0]).toHaveLength(3_600_000);
    expect(processorSeconds() - start).toBeLessThan(15);
  });
});
