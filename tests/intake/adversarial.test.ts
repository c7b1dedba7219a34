import { describe, expect, it } from 'vitest';
import { lotFactsSchema } from '../../src/domain/lot/lot.ts';
import { guessColumns } from '../../src/intake/columns/guess-columns.ts';
import { decodeText } from '../../src/intake/csv/decode-text.ts';
import { openTable } from '../../src/intake/open-table.ts';
import { readInChunks } from '../../src/intake/read-in-chunks.ts';
import type { RowReading } from '../../src/intake/rows/row-reading.ts';
import { CONTEXT } from './intake-context.ts';
import { processorSeconds } from './processor-time.ts';

async function take(text: string): Promise<readonly RowReading[]> {
  const table = openTable(text);
  if (!table.ok) throw new Error(table.message);
  const columns = guessColumns(table.value.headings, table.value.sample, CONTEXT);
  const rows: RowReading[] = [];
  for await (const chunk of readInChunks(table.value, columns, CONTEXT)) rows.push(...chunk);
  for (const { facts } of rows) expect(lotFactsSchema.safeParse(facts).success).toBe(true);
  return rows;
}

const VIN = '1ZL3H4C21M0104471';

describe('a file made to do harm', () => {
  it('can head its columns with names that objects have', async () => {
    const [row] = await take(`__proto__,constructor,toString,VIN,hasOwnProperty\n{"x":1},a,b,${VIN},c`);
    expect(row?.facts).toEqual({ vin: VIN });
    expect(({} as Record<string, unknown>).x).toBeUndefined();
  });

  it('can’t reach anything through the column that the tool wrote', async () => {
    const bad = ['{"__proto__":{"x":1}}', '{"constructor":1}', '[]', 'null', '{"vin":5}', `{"a":${'['.repeat(50_000)}`];
    for (const json of bad) {
      const [row] = await take(`VIN,More (written by Headroom)\n${VIN},"${json.replaceAll('"', '""')}"`);
      expect(row?.facts).toEqual({ vin: VIN });
    }
    expect(({} as Record<string, unknown>).x).toBeUndefined();
  });

  it('can hold HTML and formulas, which stay the text they are', async () => {
    const [row] = await take(`VIN,Make,Notes\n${VIN},<img src=x onerror=alert(1)>,=HYPERLINK("x")`);
    expect(row?.facts).toMatchObject({ make: '<img src=x onerror=alert(1)>', notes: '=HYPERLINK("x")' });
  });

  it('can have null bytes between its characters', async () => {
    const [row] = await take(`V\u0000IN,Ma\u0000ke,Miles\n${VIN},Lark\u0000spur,45\u0000210`);
    expect(row?.facts).toMatchObject({ make: 'Larkspur', miles: 45_210 });
  });

  it('can have a thousand columns', async () => {
    const headings = Array.from({ length: 1000 }, (_, i) => (i === 500 ? 'VIN' : `c${i}`));
    const cells = headings.map((heading) => (heading === 'VIN' ? VIN : 'x'));
    const rows = await take(
      [headings, ...Array.from({ length: 200 }, () => cells)].map((one) => one.join(',')).join('\n'),
    );
    expect(rows).toHaveLength(200);
    expect(rows.every(({ facts }) => facts.vin === VIN)).toBe(true);
  });

  it('can have a million columns, of which those that can be looked through are offered', async () => {
    const start = processorSeconds();
    const [row] = await take(`VIN,${'c,'.repeat(1_000_000)}\n${VIN},${'x,'.repeat(1_000_000)}`);
    expect(row?.facts.vin).toBe(VIN);
    expect(processorSeconds() - start).toBeLessThan(15);
  });

  it('can end its lines in every way at once, and loses no row', async () => {
    const rows = await take(`VIN,Make\r\n${VIN},A\n${VIN},B\r${VIN},C\r\n${VIN},D`);
    expect(rows.map(({ facts }) => facts.make)).toEqual(['A', 'B', 'C', 'D']);
  });

  it('can be a program by another name, which is refused', () => {
    const bytes = Uint8Array.from({ length: 20_000 }, (_, i) => (i * 7919 + ((i * i) % 251)) % 256);
    const decoded = decodeText(bytes);
    expect(decoded.ok ? 'read' : decoded.reason).toBe('not-text');
  });

  it('can have one cell of 20 MB, or one row of 20 MB', async () => {
    const start = processorSeconds();
    const [cell] = await take(
      `VIN,Make,Miles,Closes\n${VIN},${'x'.repeat(20_000_000)},${'9'.repeat(1_000_000)},${'1/'.repeat(500_000)}`,
    );
    expect(cell?.facts).toMatchObject({ vin: VIN });
    expect(cell?.faults.length).toBeGreaterThan(2);
    const [row] = await take(`VIN,Make\n${VIN},${'x,'.repeat(10_000_000)}`);
    expect(row?.facts).toMatchObject({ vin: VIN, make: 'x' });
    expect(processorSeconds() - start).toBeLessThan(20);
  });

  it('can have rows of any length', async () => {
    const rows = await take(
      `VIN,Make,Model\n${VIN}\n${VIN},Larkspur\n${VIN},Larkspur,Hauler,more,and more\n,,\n\n${VIN},,,`,
    );
    expect(rows.map(({ row, faults }) => [row, faults.length])).toEqual([
      [2, 0],
      [3, 0],
      [4, 1],
      [7, 0],
    ]);
  });

  it('can have the same heading twice; the second is left to be chosen', () => {
    const table = openTable(`VIN,Price now,Price now\n${VIN},9500,9600`);
    const guesses = table.ok ? guessColumns(table.value.headings, table.value.sample) : [];
    expect(guesses.map(({ field }) => field)).toEqual(['vin', 'priceNow', null]);
  });

  it('can be made of nothing but quotes, delimiters or line ends', async () => {
    for (const text of ['"'.repeat(10_001), `${',\n'.repeat(1000)}x`, `${'\r'.repeat(1000)}x`, '"\n'.repeat(999)]) {
      const table = openTable(text);
      if (table.ok) await take(text);
      else expect(table.message).toMatch(/\w/);
    }
  });
});

describe('reading', () => {
  const rows = Array.from({ length: 1050 }, (_, i) => `${VIN.slice(0, 13)}${1000 + i},Larkspur`);
  const text = ['VIN,Make', ...rows].join('\n');

  it('lets the page have its turn between chunks', async () => {
    const table = openTable(text);
    if (!table.ok) throw new Error(table.message);
    const columns = guessColumns(table.value.headings, table.value.sample);
    const log: string[] = [];
    const pause = async () => void log.push('pause');
    for await (const chunk of readInChunks(table.value, columns, CONTEXT, { rowsAtOnce: 500, pause })) {
      log.push(`${chunk.length} from ${chunk[0]?.row}`);
    }
    expect(log).toEqual(['500 from 2', 'pause', '500 from 502', 'pause', '50 from 1002']);
  });

  it('ends when it is told to, with what was read so far', async () => {
    const table = openTable(text);
    if (!table.ok) throw new Error(table.message);
    const stop = new AbortController();
    let count = 0;
    const columns = guessColumns(table.value.headings, table.value.sample);
    for await (const chunk of readInChunks(table.value, columns, CONTEXT, { rowsAtOnce: 100, signal: stop.signal })) {
      count += chunk.length;
      if (count === 300) stop.abort();
    }
    expect(count).toBe(300);
  });

  it('does not keep the page for long at a time', async () => {
    const table = openTable(['VIN,Make', ...Array.from({ length: 20 }, () => rows).flat()].join('\n'));
    if (!table.ok) throw new Error(table.message);
    const columns = guessColumns(table.value.headings, table.value.sample);
    let turns = 0;
    const timer = setInterval(() => turns++, 1);
    for await (const chunk of readInChunks(table.value, columns, CONTEXT)) expect(chunk.length).toBeGreaterThan(0);
    clearInterval(timer);
    expect(turns).toBeGreaterThan(3);
  });
});
