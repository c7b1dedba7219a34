import { ScrollX } from './scroll-x.tsx';

export interface ColumnTableProps<Role extends string> {
  readonly columns: readonly { readonly column: number; readonly heading: string; readonly role: Role | null }[];
  readonly roles: readonly { readonly role: Role; readonly label: string }[];
  /** The first rows of the file, cell by cell. */
  readonly sample: readonly (readonly string[])[];
  readonly onChange: (column: number, role: Role | null) => void;
}

const ROWS = 3;
const LONGEST = 120;

/** What each column of a file is read as, with its first cells, so that the user can correct it. */
export function ColumnTable<Role extends string>({ columns, roles, sample, onChange }: ColumnTableProps<Role>) {
  return (
    <ScrollX label="What each column holds">
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
                    onChange(column, roles.find((each) => each.role === event.currentTarget.value)?.role ?? null)
                  }
                >
                  <option value="">leave out</option>
                  {roles.map((each) => (
                    <option key={each.role} value={each.role}>
                      {each.label}
                    </option>
                  ))}
                </select>
              </td>
              <td class="small quiet">
                {sample
                  .slice(0, ROWS)
                  .map((row) => row[column]?.trim())
                  .filter(Boolean)
                  .join(' · ')
                  .slice(0, LONGEST)}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </ScrollX>
  );
}
