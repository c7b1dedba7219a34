import type { Cents } from '../../domain/money/cents.ts';
import { formatMoney } from '../../domain/money/format-money.ts';
import { parseMoney } from '../../domain/money/parse-money.ts';
import { refuse } from '../../domain/outcome.ts';
import { ReadInput } from '../inputs/read-input.tsx';

export interface MoneyCellProps {
  /** Said to a screen reader; the column's head says it to everyone else. */
  readonly label: string;
  readonly value: Cents | undefined;
  readonly required?: boolean;
  /** What an empty cell means. */
  readonly placeholder?: string;
  readonly onCommit: (value: Cents | undefined) => void;
}

/** An amount in a table whose head names the unit once. */
export function MoneyCell(props: MoneyCellProps) {
  return <ReadInput<Cents> {...props} write={writeCell} read={readCell} numeric />;
}

const writeCell = (value: Cents) => formatMoney(value).replace('$', '');

function readCell(text: string) {
  const amount = parseMoney(text);
  if (amount.ok && amount.value < 0) return refuse('negative', 'This can’t be below $0.');
  return amount;
}
