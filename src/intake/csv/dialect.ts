import { splitCells } from './split-cells.ts';

/** How a file keeps its cells and rows apart. */
export interface Dialect {
  readonly delimiter: Delimiter;
  /** `\n` also reads files that mix LF and CRLF. */
  readonly newline: '\n' | '\r';
  /** Where the rows begin: after a first line such as `sep=;`, else 0. */
  readonly start: number;
}

export const DELIMITERS = [',', '\t', ';', '|'] as const;
export type Delimiter = (typeof DELIMITERS)[number];

/** Some hundred rows say it as well as all of them. */
const SAMPLE = 64_000;
const SAMPLE_ROWS = 100;
/** Nobody types a tab into a cell, while every amount may have a comma. */
const TAB_WEIGHT = 2;

/** Finds the delimiter that splits the beginning of a text most evenly into most columns. */
export function sniffDialect(text: string): Dialect {
  const newline = text.includes('\n') || !text.includes('\r') ? '\n' : '\r';
  const stated = /^\ufeff?sep=([,\t;|])\r?\n?/i.exec(text);
  if (stated !== null) return { delimiter: stated[1] as Delimiter, newline, start: stated[0].length };
  const start = text.startsWith('\ufeff') ? 1 : 0;
  const sample = text.slice(start, start + SAMPLE);
  const scores = DELIMITERS.map((delimiter) => ({ delimiter, score: evenness(sample, delimiter, newline) }));
  const best = scores.reduce((a, b) => (b.score > a.score ? b : a));
  return { delimiter: best.delimiter, newline, start };
}

/** Share of rows with the commonest number of columns, weighted by how many columns that is; 0 when it splits nothing. */
function evenness(sample: string, delimiter: Delimiter, newline: Dialect['newline']): number {
  if (!sample.includes(delimiter)) return 0;
  const { data } = splitCells(sample, { delimiter, newline, most: SAMPLE_ROWS });
  const widths = new Map<number, number>();
  let rows = 0;
  for (const cells of data) {
    if (cells.every((cell) => cell.trim() === '')) continue;
    rows++;
    widths.set(cells.length, (widths.get(cells.length) ?? 0) + 1);
  }
  const [width, count] = [...widths].reduce((a, b) => (b[1] > a[1] ? b : a), [1, 0]);
  return width < 2 ? 0 : (count / rows) * Math.log2(width) * (delimiter === '\t' ? TAB_WEIGHT : 1);
}
