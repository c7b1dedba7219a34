import { INVOICE_ROLES, type InvoiceRole } from '../../../src/domain/books/invoice/invoice-mapping.ts';
import type { InvoiceColumn } from '../../../src/intake/invoices/map-invoice.ts';
import type { Table } from '../../../src/intake/open-table.ts';
import { ColumnTable } from '../../../src/ui/tables/column-table.tsx';
import { ROLE_WORDS } from './role-words.ts';

interface InvoiceColumnsProps {
  readonly table: Table;
  readonly columns: readonly InvoiceColumn[];
  readonly onChange: (columns: readonly InvoiceColumn[]) => void;
}

const ROLES = INVOICE_ROLES.map((role) => ({ role, label: ROLE_WORDS[role] }));

/** What each column of the file is taken for, with a few of its cells. It is remembered for the venue. */
export function InvoiceColumns({ table, columns, onChange }: InvoiceColumnsProps) {
  const guessed = columns.filter(({ remembered }) => !remembered).length;
  const change = (column: number, role: InvoiceRole | null) =>
    onChange(columns.map((each) => (each.column === column ? { ...each, role } : each)));
  return (
    <details class="panel" open={guessed > 0}>
      <summary>
        <strong>What each column holds.</strong>{' '}
        {guessed === 0
          ? 'Same columns as this venue’s last invoice.'
          : 'Guessed from the headings. Check them once; they are remembered for this venue.'}
      </summary>
      <ColumnTable columns={columns} roles={ROLES} sample={table.sample} onChange={change} />
    </details>
  );
}
