import { COLUMN_FIELDS, type ColumnFieldId } from '../../src/intake/columns/column-fields.ts';
import type { Table } from '../../src/intake/open-table.ts';
import type { ColumnChoice } from '../../src/intake/rows/read-row.ts';
import { ColumnTable } from '../../src/ui/tables/column-table.tsx';

interface ColumnChoicesProps {
  readonly table: Table;
  readonly columns: readonly ColumnChoice[];
  readonly onChange: (columns: readonly ColumnChoice[]) => void;
}

const ROLES = COLUMN_FIELDS.map(({ id, label }) => ({ role: id, label }));

/** What each column is read as, with a few of its cells, so that the user can correct it. */
export function ColumnChoices({ table, columns, onChange }: ColumnChoicesProps) {
  const left = columns.filter(({ field }) => field === null).length;
  return (
    <details class="panel" open={left > 0}>
      <summary>
        <strong>What each column holds.</strong>{' '}
        {left === 0 ? 'All columns were recognized.' : `${left} of ${columns.length} will be left out.`}
      </summary>
      <ColumnTable
        columns={columns.map(({ column, heading, field }) => ({ column, heading, role: field }))}
        roles={ROLES}
        sample={table.sample}
        onChange={(column, field) => onChange(withField(columns, column, field))}
      />
    </details>
  );
}

/** One column a field: choosing it here takes it from the column that had it, but for notes. */
function withField(columns: readonly ColumnChoice[], column: number, field: ColumnFieldId | null): ColumnChoice[] {
  return columns.map((choice) => {
    const { rivalOf, ...chosen } = choice;
    if (choice.column === column) return { ...chosen, field };
    const settled = rivalOf === field ? chosen : choice;
    return field !== null && field !== 'notes' && choice.field === field ? { ...settled, field: null } : settled;
  });
}
