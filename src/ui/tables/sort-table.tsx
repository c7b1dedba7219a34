import type { ComponentChildren } from 'preact';
import { useState } from 'preact/hooks';
import { ScrollX } from './scroll-x.tsx';
import { ShowAll } from './show-all.tsx';

export interface SortColumn<Row> {
  readonly key: string;
  readonly label: string;
  /** What it is sorted and searched by; null sorts last. */
  readonly by: (row: Row) => string | number | null;
  readonly cell: (row: Row) => ComponentChildren;
  /** Figures stand to the right. */
  readonly number?: true;
  /** What stands under the column for the rows that are shown. */
  readonly total?: (rows: readonly Row[]) => ComponentChildren;
}

export interface SortTableProps<Row> {
  /** Says what the table is, to a screen reader and above the print. */
  readonly label: string;
  readonly columns: readonly SortColumn<Row>[];
  readonly rows: readonly Row[];
  readonly rowKey: (row: Row) => string;
  /** The column it is sorted by at first, downwards when it begins with a minus. */
  readonly first: string;
  /** What the first cell of the totals says. */
  readonly totalLabel?: string;
  /** Rows that are drawn before somebody asks for all: a table of thousands takes seconds. Totals count every row. */
  readonly most?: number;
  /** Shown in place of no rows. */
  readonly empty: ComponentChildren;
}

/** A table that is sorted by pressing a column's head, with the totals of what it shows. The first column heads its row. */
export function SortTable<Row>({ label, columns, rows, rowKey, first, totalLabel, most, empty }: SortTableProps<Row>) {
  const [all, setAll] = useState(false);
  const [sort, setSort] = useState({ key: first.replace(/^-/, ''), down: first.startsWith('-') });
  const column = columns.find(({ key }) => key === sort.key);
  const sorted = column === undefined ? rows : [...rows].sort((a, b) => inOrder(column.by(a), column.by(b), sort.down));
  const shown = all || most === undefined ? sorted : sorted.slice(0, most);
  const hasTotals = columns.some(({ total }) => total !== undefined);
  if (rows.length === 0) return <p class="quiet">{empty}</p>;
  return (
    <>
      <ScrollX label={label}>
        <table class="ledger sort-table">
          <caption class="visually-hidden">{label}</caption>
          <thead>
            <tr>
              {columns.map((each) => (
                <th
                  key={each.key}
                  scope="col"
                  class={each.number && 'number'}
                  aria-sort={each.key === sort.key ? (sort.down ? 'descending' : 'ascending') : undefined}
                >
                  <button
                    type="button"
                    class="sort-head in-print"
                    onClick={() =>
                      setSort({ key: each.key, down: each.key === sort.key ? !sort.down : each.number === true })
                    }
                  >
                    {each.label}
                    <span aria-hidden="true">{each.key === sort.key ? (sort.down ? ' ↓' : ' ↑') : ''}</span>
                  </button>
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {shown.map((row) => (
              <tr key={rowKey(row)}>
                {columns.map((each, i) =>
                  i === 0 ? (
                    <th key={each.key} scope="row" class="row-head">
                      {each.cell(row)}
                    </th>
                  ) : (
                    <td key={each.key} class={each.number && 'number'}>
                      {each.cell(row)}
                    </td>
                  ),
                )}
              </tr>
            ))}
          </tbody>
          {hasTotals && (
            <tfoot>
              <tr class="total">
                {columns.map((each, i) => (
                  <td key={each.key} class={each.number && 'number'}>
                    {each.total === undefined ? (i === 0 ? totalLabel : null) : each.total(rows)}
                  </td>
                ))}
              </tr>
            </tfoot>
          )}
        </table>
      </ScrollX>
      <ShowAll
        shown={shown.length}
        of={sorted.length}
        which="The first"
        more="; the totals are for all"
        onAll={() => setAll(true)}
      />
    </>
  );
}

function inOrder(a: string | number | null, b: string | number | null, down: boolean): number {
  if (a === null || b === null) return a === b ? 0 : a === null ? 1 : -1;
  const order = typeof a === 'number' && typeof b === 'number' ? a - b : String(a).localeCompare(String(b), 'en-US');
  return down ? -order : order;
}
