import type { InvoiceRole } from '../../../src/domain/books/invoice/invoice-mapping.ts';

/** What a column is said to hold where it is chosen. */
export const ROLE_WORDS: Readonly<Record<InvoiceRole, string>> = {
  vin: 'VIN',
  lot: 'Lot number',
  date: 'Date',
  number: 'Invoice number',
  words: 'What it is for',
  amount: 'Amount of the row',
  hammer: 'Hammer price',
  fee: 'A fee, named by its heading',
  transport: 'Transport',
  other: 'Another cost',
  credit: 'A credit',
  payment: 'Paid',
  total: 'Row total, for checking',
};
