import { useState } from 'preact/hooks';
import { matchSold } from '../../../src/domain/books/sold/match-sold.ts';
import type { Outcome } from '../../../src/domain/outcome.ts';
import { openInvoice } from '../../../src/intake/invoices/open-invoice.ts';
import { openFile } from '../../../src/intake/open-file.ts';
import { openTable, type Table } from '../../../src/intake/open-table.ts';
import { type ReadSold, readSold } from '../../../src/intake/sold/read-sold.ts';
import { FieldFrame } from '../../../src/ui/inputs/field.tsx';
import { useBooks } from '../use-books.ts';
import { SoldReview } from './sold-review.tsx';

const EXAMPLE = 'VIN\tSold date\tPrice\tSold to\n1LX3H4C21M0104471\t11/28/2026\t$31,900\tcustomer';

/** A list of sold cars in: read, matched to the folders, looked at, and recorded car by car. */
export function SoldPart() {
  const { folders, today } = useBooks();
  const [read, setRead] = useState<{ readonly file: string; readonly sold: ReadSold }>();
  const [fault, setFault] = useState<string>();
  const [text, setText] = useState('');

  const take = (opening: Outcome<Table>, file: string) => {
    const table = openInvoice(opening);
    const sold = table.ok ? readSold(table.value, today) : table;
    setFault(sold.ok ? undefined : `${file}: ${sold.message}`);
    setRead(sold.ok ? { file, sold: sold.value } : undefined);
  };
  return (
    <>
      <header class="stack">
        <h1>Sold cars</h1>
        <p class="prose">
          What your cars sold for, as CSV or as rows pasted from a spreadsheet, with the headings VIN, Sold date and
          Price. Each car is matched to its folder by VIN. Nothing is recorded until you say so.
        </p>
      </header>
      {fault !== undefined && (
        <p class="note warning" role="alert">
          {fault} Nothing was recorded.
        </p>
      )}
      {read === undefined ? (
        <section class="panel stack no-print">
          <FieldFrame label="Rows of sold cars" wide>
            {({ id }) => (
              <textarea
                id={id}
                rows={5}
                value={text}
                placeholder={EXAMPLE}
                spellcheck={false}
                onInput={(event) => setText(event.currentTarget.value)}
              />
            )}
          </FieldFrame>
          <div class="row">
            <label class="button main">
              Choose a CSV file
              <input
                type="file"
                class="visually-hidden"
                accept=".csv,.tsv,.txt,text/csv,text/tab-separated-values,text/plain"
                onChange={async (event) => {
                  const file = event.currentTarget.files?.[0];
                  event.currentTarget.value = '';
                  if (file) take(await openFile(file), file.name);
                }}
              />
            </label>
            <button
              type="button"
              disabled={text.trim() === ''}
              onClick={() => take(openTable(text), 'The pasted rows')}
            >
              Preview rows
            </button>
          </div>
        </section>
      ) : (
        <SoldReview
          file={read.file}
          sales={matchSold(read.sold.rows, folders)}
          faults={read.sold.faults}
          onDone={() => setRead(undefined)}
        />
      )}
    </>
  );
}
