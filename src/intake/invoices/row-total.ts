import type { InvoiceLine } from '../../domain/books/invoice/invoice-line.ts';
import { cents } from '../../domain/money/cents.ts';
import { formatMoney } from '../../domain/money/format-money.ts';
import { parseMoney } from '../../domain/money/parse-money.ts';

/** A row that states its own total must come to it; payments may or may not be in it. */
export function rowTotalFault(text: string, made: readonly InvoiceLine[]): string | null {
  if (text === '' || made.length === 0) return null;
  const total = parseMoney(text);
  if (!total.ok) return `Total: ${total.message}`;
  const sum = (lines: readonly InvoiceLine[]) => lines.reduce((all, line) => all + line.cents, 0);
  const costs = sum(made.filter(({ what }) => what === 'cost'));
  const paid = sum(made.filter(({ what }) => what === 'payment'));
  if (total.value === costs || total.value === costs - paid) return null;
  return `The amounts in this row add up to ${formatMoney(cents(costs))}, but its total says ${formatMoney(total.value)}. Ask the venue which is right; the amounts are shown as listed.`;
}
