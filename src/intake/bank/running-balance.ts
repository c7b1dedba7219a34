import { type Cents, cents, sumCents } from '../../domain/money/cents.ts';
import { formatMoney } from '../../domain/money/format-money.ts';
import type { BalanceCheck, StatementRow } from './statement-read.ts';

export interface BalancedLine {
  readonly row: number;
  readonly cents: Cents;
  /** After the line, where the row says it. */
  readonly balance?: Cents;
  /** Its amount says nothing of its direction: the balance does. */
  readonly free: boolean;
}

interface Stated {
  readonly opening?: Cents | undefined;
  readonly closing?: Cents | undefined;
}

interface Checked<Line> {
  /** In the order of the file. */
  readonly lines: readonly Line[];
  readonly newestFirst: boolean;
  readonly opening?: Cents | undefined;
  readonly closing?: Cents | undefined;
  readonly balance?: BalanceCheck | undefined;
  /** Lines whose direction the balances don't tell. */
  readonly faults: readonly StatementRow[];
}

/**
 * Holds each running balance against the one before and the line's amount, from the first line down or, where the newest
 * stands first, from the last line up. Where all amounts prove to be turned around (as a card's may be), they are turned.
 */
export function checkBalances<Line extends BalancedLine & { readonly date: string }>(
  lines: readonly Line[],
  stated: Stated,
): Checked<Line> {
  const running = lines.filter(({ balance }) => balance !== undefined).length > lines.length / 2;
  const dated = (lines[0]?.date ?? '') > (lines.at(-1)?.date ?? '');
  const ways = ([false, true] as const).flatMap((newestFirst) =>
    ([1, -1] as const).map((sign) => ({ newestFirst, ...walk(lines, newestFirst, sign, stated.opening) })),
  );
  // Without balances only the days tell which line is the first.
  const best = running
    ? ways.reduce((a, b) =>
        b.ties > a.ties || (b.ties === a.ties && b.turned < a.turned && b.newestFirst === dated) ? b : a,
      )
    : { ...walk(lines, dated, 1, stated.opening), newestFirst: dated };
  const faults = best.lines.flatMap(({ row, free }) =>
    free
      ? [{ row, message: 'Nothing says whether this is money in or out. Choose what amounts without a sign are.' }]
      : [],
  );
  const kept = best.lines.filter(({ free }) => !free);
  const opening = stated.opening ?? best.opening;
  const closing = stated.closing ?? best.closing;
  return { lines: kept, newestFirst: best.newestFirst, faults, ...sumUp(kept, { opening, closing }, best) };
}

interface Walked<Line> {
  readonly lines: readonly Line[];
  readonly ties: number;
  readonly turned: number;
  readonly offAt: readonly { readonly row: number; readonly by: Cents }[];
  readonly opening?: Cents | undefined;
  readonly closing?: Cents | undefined;
}

function walk<Line extends BalancedLine>(
  lines: readonly Line[],
  newestFirst: boolean,
  sign: 1 | -1,
  opening: Cents | undefined,
): Walked<Line> {
  const inOrder = newestFirst ? lines.toReversed() : lines;
  const offAt: { row: number; by: Cents }[] = [];
  let ties = 0;
  let before = opening;
  const read = inOrder.map((line): Line => {
    const { balance } = line;
    const moved = before === undefined || balance === undefined ? undefined : balance - before;
    const isFree = line.free && moved !== undefined && Math.abs(moved) === Math.abs(line.cents);
    const amount = isFree ? moved : sign * line.cents;
    if (moved !== undefined) {
      if (moved === amount) ties++;
      else offAt.push({ row: line.row, by: cents(moved - amount) });
    }
    before = balance ?? (before === undefined ? undefined : cents(before + amount));
    return { ...line, cents: cents(amount), free: line.free && !isFree };
  });
  const first = inOrder[0]?.balance;
  const start = opening ?? (first === undefined ? undefined : cents(first - (read[0]?.cents ?? 0)));
  const back = newestFirst ? read.toReversed() : read;
  return { lines: back, ties, turned: sign === 1 ? 0 : 1, offAt, opening: start, closing: inOrder.at(-1)?.balance };
}

function sumUp<Line extends BalancedLine>(
  lines: readonly Line[],
  { opening, closing }: Stated,
  { offAt, turned }: Walked<Line>,
) {
  if (closing === undefined || opening === undefined) return { opening, closing };
  const difference = cents(closing - opening - sumCents(lines.map((line) => line.cents)));
  const [first] = offAt;
  const turn =
    turned === 1 ? ' The file writes money out above zero; the balances show it, so the signs are turned around.' : '';
  const sums = `${formatMoney(opening)} and the lines come to ${formatMoney(cents(closing - difference))}`;
  const message =
    difference !== 0
      ? `${sums}, but the closing balance is ${formatMoney(closing)}: ${formatMoney(cents(Math.abs(difference)))} ${difference > 0 ? 'more' : 'less'}. A line is missing or was read wrong.${turn}`
      : first !== undefined
        ? `${sums}, the closing balance, but the balance in row ${first.row} is off by ${formatMoney(cents(Math.abs(first.by)))}.${turn}`
        : `${sums}, as the closing balance says.${turn}`;
  const balance: BalanceCheck = { ties: difference === 0 && first === undefined, message };
  return { opening, closing, balance };
}
