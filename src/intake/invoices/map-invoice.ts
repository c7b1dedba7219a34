import type { InvoiceMapping, InvoiceRole } from '../../domain/books/invoice/invoice-mapping.ts';
import type { Table } from '../open-table.ts';
import { guessRole } from './guess-role.ts';
import { nameCars, roleOfCells } from './role-of-cells.ts';

export interface InvoiceColumn {
  readonly column: number;
  readonly heading: string;
  readonly role: InvoiceRole | null;
  /** It is read as it was the last time, and not guessed. */
  readonly remembered: boolean;
  /** Its cells name cars, by their VIN. */
  readonly namesCars?: boolean | undefined;
}

/** There may be many columns of these; of every other role one. */
const MANY: ReadonlySet<InvoiceRole> = new Set(['fee', 'other', 'credit', 'payment', 'transport']);

/** What each column of a file holds: as it was said for this venue before, else as its heading and its cells read. */
export function mapInvoice(table: Table, remembered: InvoiceMapping | undefined): InvoiceColumn[] {
  const width = Math.max(table.headings?.length ?? 0, ...table.sample.map((row) => row.length));
  const taken = new Set<InvoiceRole>();
  const headings = Array.from(
    { length: width },
    (_, column) => table.headings?.[column]?.trim() || `Column ${column + 1}`,
  );
  const known = (heading: string): boolean => remembered !== undefined && Object.hasOwn(remembered, heading);
  for (const heading of headings) {
    const role = known(heading) ? remembered?.[heading] : null;
    if (role) taken.add(role);
  }
  const guesses = headings.map((heading, column) =>
    roleOfCells(
      heading,
      guessRole(heading),
      table.sample.map((row) => row[column] ?? ''),
    ),
  );
  return headings.map((heading, column) => {
    const namesCars = { namesCars: nameCars(table.sample.map((row) => row[column] ?? '')) };
    if (known(heading)) return { column, heading, role: remembered?.[heading] ?? null, remembered: true, ...namesCars };
    const guess = guesses[column] ?? null;
    const free = guess === null || MANY.has(guess) || !taken.has(guess);
    if (guess !== null && free) taken.add(guess);
    return { column, heading, role: free ? guess : null, remembered: false, ...namesCars };
  });
}

/** As it is remembered for the venue. */
export const mappingOf = (columns: readonly InvoiceColumn[]): InvoiceMapping =>
  Object.fromEntries(columns.map(({ heading, role }) => [heading.slice(0, 200), role]));

/** Why a file can't be read with these columns, or null. */
export function mappingFault(columns: readonly InvoiceColumn[]): string | null {
  const has = (...roles: readonly InvoiceRole[]) => columns.some(({ role }) => role !== null && roles.includes(role));
  if (!has('vin', 'lot') && !columns.some(({ role, namesCars }) => role === 'words' && namesCars === true))
    return 'No column says which car a row is for. Choose the column with the VIN or the lot number.';
  if (!has('amount', 'hammer', 'fee', 'transport', 'other', 'credit', 'payment'))
    return 'No column holds an amount. Choose the one that does.';
  return null;
}
