import { type Cents, cents } from '../../domain/money/cents.ts';
import { formatMoney } from '../../domain/money/format-money.ts';
import { parseMoney } from '../../domain/money/parse-money.ts';
import { type Outcome, ok, refuse } from '../../domain/outcome.ts';
import type { ColumnFieldId } from '../columns/column-fields.ts';
import { unitInHeading } from '../columns/heading-unit.ts';
import type { RowContext } from './row-context.ts';
import type { Cell } from './row-draft.ts';
import { shorten } from './shorten.ts';

/** Less than that is no such amount: most often it is the front part of "1,200" without quote marks. */
const LEAST: Readonly<Partial<Record<ColumnFieldId, Cents>>> = {
  retailLow: cents(10_000),
  retailLikely: cents(10_000),
  retailHigh: cents(10_000),
  reconLow: cents(1000),
  reconLikely: cents(1000),
  reconHigh: cents(1000),
  transport: cents(1000),
};

/** An amount of 0 or more in plain dollars, as prices and costs are; nothing that a moved cell or another unit may have left. */
export function readAmount(cell: Cell, { decimal, ownFile, unitIn }: RowContext): Outcome<Cents> {
  const unit = unitIn(cell.heading, () => unitInHeading(cell.heading));
  if (unit !== null) return refuse('unit', inDollars(cell, unit));
  const amount = parseMoney(cell.text, decimal === undefined ? {} : { decimal });
  if (!amount.ok) return amount;
  if (amount.value < 0) {
    return refuse('negative', `“${cell.text}” is below $0. Write the amount without its sign, or leave it out.`);
  }
  const least = LEAST[cell.field];
  if (ownFile || least === undefined || amount.value === 0 || amount.value >= least) return ok(amount.value);
  return refuse(
    'too-small',
    `${formatMoney(amount.value)} is too little to be meant. A comma inside a value may have moved the cells of this row: check them.`,
  );
}

const inDollars = ({ heading }: Cell, unit: string): string =>
  `The heading “${shorten(heading, 60)}” says “${unit}”, and only plain US dollars are read. Write the amounts of this column in dollars, and leave “${unit}” out of its heading.`;
