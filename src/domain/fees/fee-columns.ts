import { ZERO } from '../money/cents.ts';
import { ppm } from '../money/rate.ts';
import { type Outcome, ok, refuse } from '../outcome.ts';
import { type FeeRow, feeAmounts, priceSpan } from './fee-row.ts';
import { type FeeToken, feeTokens, percent } from './fee-table-tokens.ts';

type Column = 'from' | 'to' | 'range' | 'flat' | 'percent' | 'least' | 'most';

/** How people head these columns. */
const HEADS: readonly (readonly [Column, RegExp])[] = [
  ['percent', /^(percent(age)?|pct|%|rate|fee ?%|percent fee)$/],
  ['least', /^(min(imum)?( fee)?|at least|least)$/],
  ['most', /^(max(imum)?( fee)?|cap|at most|most)$/],
  ['from', /^(from|low|lower|start|starts( at)?|over|above|(sale |hammer )?price from|min price|price \(from\))$/],
  ['to', /^(to|high|upper|end|ends( at)?|through|up to|(sale |hammer )?price to|max price|price \(to\))$/],
  ['range', /^((sale|hammer|purchase|vehicle|sold) )?(price|amount|bid)( range)?$|^range$/],
  ['flat', /^(flat|flat fee|fee|fees|charge|(buy|buyer|buyer’s|buyer's|online|internet) fee|\$)$/],
];

export interface HeadedColumns {
  readonly columns: readonly (Column | undefined)[];
  readonly separator: RegExp;
  /** Two fee columns side by side: a table holds one fee. */
  readonly fault?: string;
}

const SEPARATORS = [/\t/, /\s*;\s*/, /\s*\|\s*/, /\s*,\s*/, /\s{2,}/];

/** Reads a heading line, if it names at least the prices and a fee; undefined when it is no such line. */
export function headedColumns(line: string): HeadedColumns | undefined {
  if (/\d/.test(line)) return undefined;
  for (const separator of SEPARATORS) {
    const columns = line.trim().split(separator).map(columnOf);
    const has = (...wanted: Column[]) => wanted.some((column) => columns.includes(column));
    if (!has('from', 'to', 'range') || !has('flat', 'percent')) continue;
    const twice = columns.filter((column) => column === 'flat').length > 1;
    return { columns, separator, ...(twice ? { fault: TWO_FEES } : {}) };
  }
  return undefined;
}

const TWO_FEES = 'This heading names two fees. Paste one fee column at a time, each into its own table.';

function columnOf(head: string): Column | undefined {
  const plain = head
    .trim()
    .replace(/^"|"$/g, '')
    .toLowerCase()
    .replace(/\s*(\(\$\)|\(%\))$/, '');
  return HEADS.find(([, pattern]) => pattern.test(plain))?.[0];
}

/** Reads one line under such a heading; undefined when it does not keep to the columns. */
export function headedRow(line: string, { columns, separator }: HeadedColumns): Outcome<FeeRow> | undefined {
  const cells = cellsOf(line, separator);
  if (cells.length < 2) return undefined;
  if (cells.length > columns.length && cells.slice(columns.length).some((cell) => cell !== '')) {
    return refuse(
      'too-many-cells',
      'This line has more columns than the heading. Commas inside amounts cut them in two: paste with tabs, or leave them out.',
    );
  }
  const cell = (column: Column) => {
    const text = cells[columns.indexOf(column)] ?? '';
    return /^[-–—−]?$/.test(text) ? '' : text;
  };
  const span = priceSpan([
    ...feeTokens(cell('range') || cell('from')),
    ...(cell('to') === '' ? [] : [{ kind: cell('from') === '' ? 'up-to' : 'to' } as const, ...feeTokens(cell('to'))]),
  ]);
  if (!span.ok) return span;
  const tokens: FeeToken[] = [
    ...feeTokens(cell('flat')),
    ...percentCell(cell('percent')),
    ...limit('least', cell('least')),
    ...limit('most', cell('most')),
  ];
  if (tokens.some((token) => token.kind === 'unreadable') || span.value.rest.length > 0) {
    return refuse(
      'unreadable',
      'A cell of this line can’t be read. Write amounts like 1,250.00 and percentages like 2.5%.',
    );
  }
  if (tokens.length === 0 && columns.includes('flat') && columns.includes('percent')) {
    return ok({ ...span.value.span, flatCents: ZERO, ratePpm: ppm(0) });
  }
  const amounts = feeAmounts(tokens);
  return amounts.ok ? ok({ ...span.value.span, ...amounts.value }) : amounts;
}

/** Cells of one line; quotes keep a comma inside a cell. */
function cellsOf(line: string, separator: RegExp): readonly string[] {
  const kept: string[] = [];
  const shielded = line.replace(/"([^"]*)"/g, (_, cell: string) => `\uE000${kept.push(cell) - 1}\uE000`);
  return shielded
    .trimEnd()
    .split(separator)
    .map((cell) => cell.trim().replace(/\uE000(\d+)\uE000/g, (_, index: string) => kept[Number(index)] ?? ''));
}

const limit = (kind: 'least' | 'most', text: string): readonly FeeToken[] =>
  text === '' ? [] : [{ kind }, ...feeTokens(text)];

/** A percentage may stand without its sign here, unless it is so small that it is more likely a share of one. */
function percentCell(text: string): readonly FeeToken[] {
  const bare = /^(\d+)(?:\.(\d+))?$/.exec(text);
  if (bare === null) return feeTokens(text);
  const value = Number(text);
  if (value > 0 && value < 0.3) return [{ kind: 'unreadable' }];
  return [percent(bare[1] ?? '', bare[2] ?? '')];
}
