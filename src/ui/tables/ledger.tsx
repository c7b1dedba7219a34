import type { ComponentChildren } from 'preact';
import type { TermId } from '../../views/words/glossary.ts';
import { TermLink } from '../term-link.tsx';

export interface LedgerColumn<Row> {
  /** What stands at the head; a table none of whose columns has one has no head. */
  readonly label: string;
  readonly cell: (row: Row, index: number) => ComponentChildren;
  /** Figures stand to the right. */
  readonly number?: true;
  /** Its cell heads the row. */
  readonly heads?: true;
  /** The head is for screen readers only, as over a column of buttons. */
  readonly quietHead?: true;
  /** A further class of its cells and its head. */
  readonly class?: string;
  /** What its head leads to on the Words page. */
  readonly term?: TermId;
  /** What stands under it in the last line. */
  readonly total?: ComponentChildren;
}

interface LedgerProps<Row> {
  readonly columns: readonly LedgerColumn<Row>[];
  readonly rows: readonly Row[];
  readonly rowKey: (row: Row, index: number) => string | number;
  readonly caption?: string;
  /** How the caption looks: plain when not given, or for screen readers only. */
  readonly captionClass?: string;
  readonly class?: string;
  /** Said again by screen readers when it changes. */
  readonly live?: boolean;
  /** Lines below the totals, as table rows. */
  readonly foot?: ComponentChildren;
}

/** A table that is read: one array of columns gives its head, its cells and its totals. */
export function Ledger<Row>({
  columns,
  rows,
  rowKey,
  caption,
  captionClass,
  class: own,
  live,
  foot,
}: LedgerProps<Row>) {
  return (
    <table class={own === undefined ? 'ledger' : `ledger ${own}`} aria-live={live === true ? 'polite' : undefined}>
      {caption !== undefined && <caption class={captionClass}>{caption}</caption>}
      {columns.some(({ label }) => label !== '') && (
        <thead>
          <tr>
            {columns.map((column) => (
              <th key={column.label} scope="col" class={classOf(column)}>
                {column.quietHead ? <span class="visually-hidden">{column.label}</span> : headOf(column)}
              </th>
            ))}
          </tr>
        </thead>
      )}
      <tbody>
        {rows.map((row, index) => (
          <tr key={rowKey(row, index)}>
            {columns.map((column, at) =>
              column.heads ? (
                <th key={at} scope="row" class={classOf(column)}>
                  {column.cell(row, index)}
                </th>
              ) : (
                <td key={at} class={classOf(column)}>
                  {column.cell(row, index)}
                </td>
              ),
            )}
          </tr>
        ))}
        {columns.some(({ total }) => total !== undefined) && (
          <tr class="total">
            {columns.map((column, at) => (
              <td key={at} class={classOf(column)}>
                {column.total}
              </td>
            ))}
          </tr>
        )}
        {foot}
      </tbody>
    </table>
  );
}

function classOf<Row>({ number, class: own }: LedgerColumn<Row>): string | undefined {
  return [number && 'number', own].filter(Boolean).join(' ') || undefined;
}

function headOf<Row>({ label, term }: LedgerColumn<Row>): ComponentChildren {
  return term === undefined ? label : <TermLink term={term}>{label}</TermLink>;
}
