import { type Cents, cents, ZERO } from '../money/cents.ts';
import { formatMoney } from '../money/format-money.ts';
import type { FeeRow } from './fee-row.ts';
import type { FeeBand } from './fee-schedule.ts';

/** A row as it was stated, and the line of the pasted text (from 1) that states it. */
export interface StatedRow {
  readonly line: number;
  readonly row: FeeRow;
}

export interface ReadBand {
  readonly line: number;
  readonly band: FeeBand;
  /** What was settled for the user, to be looked at. */
  readonly note?: string;
}

export interface LineFault {
  readonly line: number;
  readonly message: string;
}

const ONE_DOLLAR = 100;

/**
 * Turns stated rows into bands that leave no price without a fee and none with two. A gap of more than a dollar or an
 * overlap is a fault and not mended: a missing row would otherwise be charged at its neighbor's fee.
 */
export function bandsOf(stated: readonly StatedRow[]): {
  readonly bands: readonly ReadBand[];
  readonly faults: readonly LineFault[];
} {
  const bands: ReadBand[] = [];
  const faults: LineFault[] = [];
  const rows = inOrderOfPrice(stated);
  let before: StatedRow | undefined;
  let startBefore = ZERO;
  for (const { line, row } of rows) {
    const { from, to } = row;
    if (from !== undefined && to !== undefined && to < from) {
      faults.push({ line, message: `Goes from ${formatMoney(from)} down to ${formatMoney(to)}. Correct one of them.` });
      continue;
    }
    const start = before === undefined ? firstStart(row) : nextStart(before.row, startBefore, row);
    if (typeof start.fault === 'string') faults.push({ line, message: start.fault });
    else {
      const { from: _from, fromExcluded: _over, to: _to, toExcluded: _under, ...amounts } = row;
      bands.push({ line, band: { fromCents: start.cents, ...amounts }, ...(start.note ? { note: start.note } : {}) });
      startBefore = start.cents;
    }
    before = { line, row };
  }
  const last = bands.at(-1);
  if (last !== undefined && before?.row.to !== undefined && faults.length === 0) {
    bands[bands.length - 1] = {
      ...last,
      note: [last.note, `Nothing is listed above ${formatMoney(before.row.to)}; this fee continues from there.`]
        .filter(Boolean)
        .join(' '),
    };
  }
  return { bands, faults };
}

/** Two printed columns side by side come out row by row; prices put them back. Rows that state only an end stay put. */
function inOrderOfPrice(stated: readonly StatedRow[]): readonly StatedRow[] {
  if (stated.some(({ row }) => row.from === undefined)) return stated;
  return stated.toSorted((a, b) => (a.row.from ?? 0) - (b.row.from ?? 0));
}

interface Start {
  readonly cents: Cents;
  readonly fault?: string;
  readonly note?: string;
}

function firstStart(row: FeeRow): Start {
  const from = row.from ?? ZERO;
  if (from === 0) return { cents: ZERO };
  if (from <= ONE_DOLLAR) return { cents: ZERO, note: `Listed from ${formatMoney(from)}; used from $0.` };
  return {
    cents: from,
    fault: `The table starts at ${formatMoney(from)}. Add a line for the prices below it, from 0, even if they pay no fee.`,
  };
}

function nextStart(before: FeeRow, startBefore: Cents, row: FeeRow): Start {
  const end = before.to;
  const start = statedStart(before, row);
  if (start === undefined) {
    return {
      cents: ZERO,
      fault: 'The line before has no end, so this one’s start is not known. Write “from – to”.',
    };
  }
  if (start <= startBefore) {
    return {
      cents: start,
      fault: `Starts at ${formatMoney(start)}, which an earlier line already covers. Remove one of them.`,
    };
  }
  if (end === undefined) return { cents: start };
  if (start < end) {
    return {
      cents: start,
      fault: `Starts at ${formatMoney(start)}, but the line before goes up to ${formatMoney(end)}. Correct one of them.`,
    };
  }
  if (start - end > ONE_DOLLAR) {
    return {
      cents: start,
      fault: `No fee is listed between ${formatMoney(end)} and ${formatMoney(start)}. A line may be missing; add it.`,
    };
  }
  if (start === end && row.from !== undefined && !before.toExcluded) {
    return { cents: start, note: `Both lines have ${formatMoney(start)}; a price exactly there pays this line’s fee.` };
  }
  return { cents: start };
}

function statedStart(before: FeeRow, row: FeeRow): Cents | undefined {
  if (row.from !== undefined) {
    // "Over $500" behind "… to $500" starts a cent above; behind "… to $499.99" it can only mean $500.
    const excluded = row.fromExcluded && before.to !== undefined && before.to >= row.from && !before.toExcluded;
    return excluded ? cents(row.from + 1) : row.from;
  }
  if (before.to === undefined) return undefined;
  if (before.toExcluded) return before.to;
  // "Up to 499" in a list of whole dollars ends where 500 starts.
  return cents(before.to + (before.to % 1000 === 900 ? ONE_DOLLAR : 1));
}
