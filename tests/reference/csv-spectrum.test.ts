import { readdirSync, readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { sniffDialect } from '../../src/intake/csv/dialect.ts';
import { readRecords } from '../../src/intake/csv/records.ts';

// csv-spectrum 2.0.0 (BSD-2): small files that CSV readers get wrong, each with what it holds as JSON.
const folder = dirname(createRequire(import.meta.url).resolve('csv-spectrum'));
// Its JSON has characters that its CSV does not, and bare quotes, which RFC 4180 does not allow in a plain field.
const NOT_COMPARABLE = 'location_coordinates';
const names = readdirSync(join(folder, 'csvs')).map((name) => name.replace('.csv', ''));

function objectsIn(text: string): unknown[] {
  const [head = [], ...rows] = [...readRecords(text, sniffDialect(text))].flatMap(({ records }) => records);
  const filled = rows.filter((cells) => cells.length > 1 || cells[0] !== '');
  return filled.map((cells) => Object.fromEntries(head.map((name, i) => [name, cells[i] ?? ''])));
}

describe('the collection of awkward files', () => {
  it('has the twelve files that are known', () => expect(names).toHaveLength(12));

  it.each(names.filter((name) => name !== NOT_COMPARABLE))('%s holds what its JSON says', (name) => {
    const text = readFileSync(join(folder, 'csvs', `${name}.csv`), 'utf8');
    const expected = [JSON.parse(readFileSync(join(folder, 'json', `${name}.json`), 'utf8'))].flat();
    expect(objectsIn(text)).toEqual(expected);
  });
});

describe('the examples of RFC 4180, section 2', () => {
  it.each([
    ['aaa,bbb,ccc\r\nzzz,yyy,xxx\r\n', [['aaa', 'bbb', 'ccc'], ['zzz', 'yyy', 'xxx'], ['']]],
    [
      '"aaa","bbb","ccc"\r\nzzz,yyy,xxx',
      [
        ['aaa', 'bbb', 'ccc'],
        ['zzz', 'yyy', 'xxx'],
      ],
    ],
    [
      '"aaa","b\r\nbb","ccc"\r\nzzz,yyy,xxx',
      [
        ['aaa', 'b\r\nbb', 'ccc'],
        ['zzz', 'yyy', 'xxx'],
      ],
    ],
    ['"aaa","b""bb","ccc"', [['aaa', 'b"bb', 'ccc']]],
  ])('%j', (text, expected) => {
    expect([...readRecords(text, sniffDialect(text))].flatMap(({ records }) => records)).toEqual(expected);
  });
});
