import { useState } from 'preact/hooks';
import { matchSold } from '../../../src/domain/books/sold/match-sold.ts';
import type { Outcome } from '../../../src/domain/outcome.ts';
import { openInvoice } from '../../../src/intake/invoices/open-invoice.ts';
import { openFile } from '../../../src/intake/open-file.ts';
import { openTable, type Table } from '../../../src/intake/open-table.ts';
import { type ReadSold, readSold } from '../../../src/intake/sold/read-sold.ts';
import { RowsOrFile, TABLE_FILES } from '../../../src/ui/inputs/rows-or-file.tsx';
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
          <RowsOrFile
            label="Rows of sold cars"
            example={EXAMPLE}
            text={text}
            onText={setText}
            choose="Choose a CSV file"
            accept={TABLE_FILES}
            onFile={async (file) => take(await openFile(file), file.name)}
            onRows={(rows) => take(openTable(rows), 'The pasted rows')}
          />
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
