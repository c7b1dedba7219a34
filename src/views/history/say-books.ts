import { PAPER_WORDS } from '../../domain/books/folder/missing-papers.ts';
import { monthInWords } from '../../domain/books/month.ts';
import { type Cents, cents } from '../../domain/money/cents.ts';
import { formatMoney } from '../../domain/money/format-money.ts';
import { sayDate } from '../../domain/time/say-time.ts';
import type { Happening } from '../../journal/happening.ts';

const SOLD = { retail: 'to a customer', business: 'to a business', wholesale: 'at wholesale' } as const;

/** What was booked, in plain words; null for an entry of another kind. */
export function sayBooks(happening: Happening): string | null {
  switch (happening.kind) {
    case 'costs-booked': {
      const { lines, payee, paid, date } = happening;
      return `Bill booked${from(payee)}: ${billed(lines)}, ${paid === 'owed' ? 'still to be paid' : 'paid at once'}, ${sayDate(date)}`;
    }
    case 'invoice-confirmed': {
      const { costs, payments, payee, document: paper } = happening;
      const paid = payments.map((one) => payment(one.cents));
      return `Booked${from(payee)}${paper.file === undefined ? '' : `, ${paper.file}`}: ${[billed(costs), ...paid].filter(Boolean).join('; ')}`;
    }
    case 'payment-booked':
      return `Booked: ${happening.lines.map((one) => payment(one.cents)).join(', ')}${happening.payee === undefined ? '' : `, ${happening.payee}`}, ${sayDate(happening.date)}`;
    case 'settlement-booked':
      return `Booked from a dispute: ${happening.label}, ${credit(happening.cents)}`;
    case 'floor-booked':
      return `Booked: ${formatMoney(happening.cents)} ${happening.move === 'draw' ? 'paid by the lender' : 'paid back to the lender'}, ${sayDate(happening.date)}`;
    case 'outcome-booked':
      return `Sold ${SOLD[happening.buyer]} for ${formatMoney(happening.priceCents)}, ${sayDate(happening.date)}`;
    case 'paper-noted':
      return happening.date === undefined
        ? `Not in the folder after all: ${PAPER_WORDS[happening.paper].toLowerCase()}`
        : `${PAPER_WORDS[happening.paper]} in the folder, ${sayDate(happening.date)}`;
    case 'invoice-mapped':
      return 'The columns of a venue’s invoices were named';
    case 'month-closed':
      return `${monthInWords(happening.month)} was closed by ${happening.by}`;
    default:
      return null;
  }
}

const from = (payee: string | undefined): string => (payee === undefined ? '' : ` from ${payee}`);
const credit = (amount: Cents): string =>
  amount < 0 ? `a credit of ${formatMoney(cents(-amount))}` : formatMoney(amount);
const billed = (lines: readonly { readonly label: string; readonly cents: Cents }[]): string =>
  lines.map(({ label, cents: amount }) => `${label} ${credit(amount)}`).join(', ');
const payment = (amount: Cents): string =>
  amount < 0 ? `${formatMoney(cents(-amount))} came back` : `paid ${formatMoney(amount)}`;
