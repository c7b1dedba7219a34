import { COLUMN_FIELDS, type ColumnFieldId } from '../../src/intake/columns/column-fields.ts';
import type { Table } from '../../src/intake/open-table.ts';
import type { ColumnChoice } from '../../src/intake/rows/read-row.ts';
import { ScrollX } from '../../src/ui/scroll-x.tsx';

interface ColumnChoicesProps {
  readonly table: Table;
  readonly columns: readonly ColumnChoice[];
  readonly onChange: (columns: readonly ColumnChoice[]) => void;
}

const SAMPLES = 3;

/** What each column is taken for, with a few of its cells, to be put right where it is wrong. */
export function ColumnChoices({ table, columns, onChange }: ColumnChoicesProps) {
  const left = columns.filter(({ field }) => field === null).length;
  return (
    <details class="panel" open={left > 0}>
      <summary>
        <strong>What the columns hold.</strong>{' '}
        {left === 0 ? 'All of them were recognised.' : `${left} of ${columns.length} would be left out.`}
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
            {columns.map((choice) => (
              <tr key={choice.column}>
                <th scope="row">{choice.heading}</th>
                <td>
                  <select
                    aria-label={`${choice.heading} is read as`}
                    value={choice.field ?? ''}
                    onChange={(event) => {
                      const chosen = COLUMN_FIELDS.find(({ id }) => id === event.currentTarget.value);
                      onChange(withField(columns, choice.column, chosen?.id ?? null));
                    }}
                  >
                    <option value="">leave out</option>
                    {COLUMN_FIELDS.map((field) => (
                      <option key={field.id} value={field.id}>
                        {field.label}
                      </option>
                    ))}
                  </select>
                </td>
                <td class="small quiet">
                  {table.sample
                    .slice(0, SAMPLES)
                    .map((row) => row[choice.column]?.trim())
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

/** One column a field: choosing it here takes it from the column that had it, but for notes. */
function withField(columns: readonly ColumnChoice[], column: number, field: ColumnFieldId | null): ColumnChoice[] {
  return columns.map((choice) => {
    if (choice.column === column) return { ...choice, field };
    return field !== null && field !== 'notes' && choice.field === field ? { ...choice, field: null } : choice;
  });
}
