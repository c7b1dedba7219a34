import type { ComponentChildren } from 'preact';
import type { Cents } from '../../domain/money/cents.ts';
import { formatMoney } from '../../domain/money/format-money.ts';
import { parseMoney } from '../../domain/money/parse-money.ts';
import { refuse } from '../../domain/outcome.ts';
import { ReadInput } from './read-input.tsx';

export interface MoneyInputProps {
  readonly label: string;
  readonly value: Cents | undefined;
  readonly onCommit: (value: Cents | undefined) => void;
  readonly required?: boolean;
  readonly hint?: ComponentChildren;
  readonly placeholder?: string;
  /** Whether it may be less than nothing. */
  readonly signed?: boolean;
}

/** An amount of money, 0 or more unless `signed`, typed in dollars the way people write them. */
export function MoneyInput({ signed = false, ...props }: MoneyInputProps) {
  return <ReadInput<Cents> {...props} write={writeAmount} read={signed ? parseMoney : readAmount} before="$" numeric />;
}

// The dollar sign stands beside the box already.
const writeAmount = (value: Cents) => formatMoney(value).replace('$', '');

function readAmount(text: string) {
  const amount = parseMoney(text);
  if (amount.ok && amount.value < 0) return refuse('negative', 'This can’t be below $0.');
  return amount;
}
