import type { LimitedBy } from '../../src/domain/deal/max-bid.ts';
import { cents } from '../../src/domain/money/cents.ts';
import { formatMoney } from '../../src/domain/money/format-money.ts';
import type { LotAnswer } from './lot-answer.ts';

const HEADINGS = [
  'Row',
  'VIN',
  'Car',
  'Venue',
  'Price now',
  'Max bid',
  'Headroom',
  'Profit',
  'All-in',
  'Limited by',
] as const;
/** Columns of figures, which stand right so that their digits line up. */
const FIGURES: ReadonlySet<number> = new Set([0, 4, 5, 6, 7, 8]);
const LONGEST_CELL = 32;

const STOPPED_BY: Record<LimitedBy, string> = {
  'least-dollars': 'minimum profit',
  'least-share': 'minimum % of retail',
  'least-return': 'minimum return on own cash',
  'loss-chance': 'chance of a loss',
  sealed: 'the bid is sealed',
  'nothing-pays': 'don’t bid',
};

/** One line a lot, in columns; below them what was assumed, each thing once with its rows. */
export function answerTable(answers: readonly LotAnswer[]): string {
  const rows = [HEADINGS, ...answers.map(cellsOf)];
  const widths = HEADINGS.map((_, column) => Math.max(...rows.map((row) => [...(row[column] ?? '')].length)));
  const lines = rows.map((row) =>
    row
      .map((cell, i) => (FIGURES.has(i) ? cell.padStart(widths[i] ?? 0) : cell.padEnd(widths[i] ?? 0)))
      .join('  ')
      .trimEnd(),
  );
  const assumed = assumedOf(answers);
  return `${[...lines, ...(assumed.length === 0 ? [] : ['', 'Assumed:', ...assumed])].join('\n')}\n`;
}

function assumedOf(answers: readonly LotAnswer[]): readonly string[] {
  const rowsOf = new Map<string, number[]>();
  for (const { row, assumptions } of answers) {
    for (const message of assumptions) rowsOf.set(message, [...(rowsOf.get(message) ?? []), row]);
  }
  return [...rowsOf].map(([message, rows]) => `  ${rowWords(rows)}: ${message}`);
}

/** "rows 2–5, 8": rows that follow one another are told by their ends. */
function rowWords(rows: readonly number[]): string {
  const spans: [first: number, last: number][] = [];
  for (const row of rows) {
    const span = spans.at(-1);
    if (span !== undefined && row === span[1] + 1) span[1] = row;
    else spans.push([row, row]);
  }
  const words = spans.map(([first, last]) => (first === last ? `${first}` : `${first}–${last}`)).join(', ');
  return `${rows.length === 1 ? 'Row' : 'Rows'} ${words}`;
}

function cellsOf(answer: LotAnswer): string[] {
  const pays = answer.maxBid !== null;
  return [
    String(answer.row),
    answer.vin ?? '',
    shortened(answer.car ?? (answer.lotNumber === null ? '' : `lot ${answer.lotNumber}`)),
    shortened(answer.venue ?? ''),
    money(answer.priceNow),
    money(answer.maxBid),
    money(answer.headroom),
    money(pays ? answer.expectedProfit : null),
    money(pays ? answer.allIn : null),
    answer.limitedBy === null ? whyNone(answer) : stoppedBy(answer.limitedBy, pays),
  ];
}

const stoppedBy = (limit: LimitedBy, pays: boolean) =>
  limit === 'loss-chance' && !pays ? `don’t bid: ${STOPPED_BY[limit]}` : STOPPED_BY[limit];

const whyNone = ({ problems }: LotAnswer): string =>
  problems.some(({ reason }) => reason === 'not-meant' || reason === 'cant-work-out')
    ? 'can’t be worked out'
    : 'something is missing';

const money = (dollars: number | null) => (dollars === null ? '–' : formatMoney(cents(Math.round(dollars * 100))));

const shortened = (text: string) => (text.length > LONGEST_CELL ? `${text.slice(0, LONGEST_CELL - 1)}…` : text);
