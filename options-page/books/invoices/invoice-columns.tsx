import { INVOICE_ROLES, type InvoiceRole } from '../../../src/domain/books/invoice/invoice-mapping.ts';
import type { InvoiceColumn } from '../../../src/intake/invoices/map-invoice.ts';
import type { Table } from '../../../src/intake/open-table.ts';
import { ScrollX } from '../../../src/ui/scroll-x.tsx';
import { ROLE_WORDS } from './role-words.ts';

interface InvoiceColumnsProps {
  readonly table: Table;
  readonly columns: readonly InvoiceColumn[];
  readonly onChange: (columns: readonly InvoiceColumn[]) => void;
}

/** What each column of the file is taken for, with a few of its cells. It is remembered for the venue. */
export function InvoiceColumns({ table, columns, onChange }: InvoiceColumnsProps) {
  const guessed = columns.filter(({ remembered }) => !remembered).length;
  const change = (column: number, role: InvoiceRole | null) =>
    onChange(columns.map((each) => (each.column === column ? { ...each, role } : each)));
  return (
    <details class="panel" open={guessed > 0}>
      <summary>
        <strong>What the columns hold.</strong>{' '}
        {guessed === 0
          ? 'Read as the last invoice of this venue was.'
          : 'Guessed from the headings; look once, it is remembered for this venue.'}
      </summary>
      <ScrollX label="What the columns hold">
        <table class="ledger">
          <thead>
            <tr>
              <th scope="col">Column</th>
              <th scope="col">Is read as</th>
              <th scope="col">First cells</th>
            </tr>
          </thead>
          <tbody>
            {columns.map(({ column, heading, role }) => (
              <tr key={column}>
                <th scope="row">{heading}</th>
                <td>
                  <select
                    aria-label={`${heading} is read as`}
                    value={role ?? ''}
                    onChange={(event) =>
                      change(column, INVOICE_ROLES.find((each) => each === event.currentTarget.value) ?? null)
                    }
                  >
                    <option value="">leave out</option>
                    {INVOICE_ROLES.map((each) => (
                      <option key={each} value={each}>
                        {ROLE_WORDS[each]}
                      </option>
                    ))}
                  </select>
                </td>
                <td class="small quiet">
                  {table.sample
                    .slice(0, 3)
                    .map((row) => row[column]?.trim())
                    .filter(Boolean)
                    .join(' · ')
                    .slice(0, 120)}
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </ScrollX>
    </details>
  );
}
