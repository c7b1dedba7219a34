import type { Cents } from '../domain/money/cents.ts';
import { parseMoney } from '../domain/money/parse-money.ts';
import { type Outcome, refuse } from '../domain/outcome.ts';

/** Reads the amount of a bid as somebody types it, for every door alike. */
export function readBid(text: string): Outcome<Cents> {
  if (text.trim() === '') return refuse('empty', 'Type the amount that you placed.');
  const amount = parseMoney(text);
  if (!amount.ok) return amount;
  if (amount.value < 0) return refuse('below-zero', 'A bid must be above $0.');
  return amount.value === 0 ? refuse('zero', 'A bid must be above $0. To take a proxy out, use Withdraw.') : amount;
}
