import type { ExpectedLine } from '../domain/books/folder/expected.ts';
import type { LotFacts } from '../domain/lot/lot.ts';
import { cents, sumCents } from '../domain/money/cents.ts';
import { formatMoney } from '../domain/money/format-money.ts';
import type { LocalDate } from '../domain/time/local-date.ts';

/** A car that the invented invoice bills. */
export interface InvoicedCar {
  readonly facts: LotFacts;
  readonly won: LocalDate;
  readonly lines: readonly ExpectedLine[];
}

const HEADINGS = ['Invoice no.', 'VIN', 'Lot', 'Sale date', 'Description', 'Amount'];

/**
 * An invented venue's invoice for these cars, as the rows of a CSV file, with what invoices get wrong: one fee $25 too
 * high, one line twice, a VIN with its last character wrong, an amount nobody can read, a car that was never won, and the
 * payment of what the fee schedule asks for, which somebody may have recorded already.
 */
export function demoInvoice(cars: readonly InvoicedCar[]): string {
  const rows: string[][] = cars.flatMap(({ facts, won, lines }, i) => {
    const billed = lines.filter(({ cost }) => cost === 'hammer' || cost === 'fee');
    const vin = i === 1 ? slip(facts.vin ?? '') : (facts.vin ?? '');
    const row = (words: string, amount: string) => [
      `5${facts.lotNumber ?? i}`,
      vin,
      facts.lotNumber ?? '',
      american(won),
      words,
      amount,
    ];
    const own = billed.map(({ key, cost, label, cents: amount }) =>
      row(
        cost === 'hammer' ? 'Vehicle' : label,
        formatMoney(cents(i === 0 && key === 'fee-0' ? amount + 2500 : amount), { cents: 'always' }),
      ),
    );
    const [, fee] = own;
    return i === 0
      ? [
          ...own,
          ...(fee === undefined ? [] : [fee]),
          row('Payment received', formatMoney(cents(-sumCents(billed.map((line) => line.cents))), { cents: 'always' })),
          row('Key cutting', 'see note'),
        ]
      : own;
  });
  rows.push([
    '59999',
    '4HJNEVERWN0000000',
    '999',
    american(cars[0]?.won ?? ('2026-01-01' as LocalDate)),
    'Buy fee',
    '$300.00',
  ]);
  return [HEADINGS, ...rows].map((row) => row.map(quoted).join(',')).join('\r\n');
}

/** A VIN as somebody typed it. */
const slip = (vin: string): string => vin.slice(0, -1) + (vin.endsWith('7') ? '1' : '7');

const american = (date: LocalDate): string =>
  `${Number(date.slice(5, 7))}/${Number(date.slice(8))}/${date.slice(0, 4)}`;

const quoted = (cell: string): string => (/[",]/.test(cell) ? `"${cell.replaceAll('"', '""')}"` : cell);
