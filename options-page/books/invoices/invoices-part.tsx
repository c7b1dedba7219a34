import { useState } from 'preact/hooks';
import { demoInvoice } from '../../../src/demo/demo-invoice.ts';
import { DEMO_STORE } from '../../../src/demo/demo-setup.ts';
import type { PurchaseFolder } from '../../../src/domain/books/folder/folder.ts';
import { openInvoice } from '../../../src/intake/invoices/open-invoice.ts';
import { openFile } from '../../../src/intake/open-file.ts';
import { openTable, type Table } from '../../../src/intake/open-table.ts';
import { ChoiceInput } from '../../../src/ui/inputs/choice-input.tsx';
import { RowsOrFile, TABLE_FILES } from '../../../src/ui/inputs/rows-or-file.tsx';
import { useWorkspace } from '../../../src/ui/workspace.ts';
import { useBooks } from '../use-books.ts';
import { InvoiceReview } from './invoice-review.tsx';
import { UndonePart } from './undone-part.tsx';

interface Opened {
  readonly table: Table;
  readonly file: string;
}

/** An invoice of the demo's venue for the cars that wait for one, with mistakes in it. */
function invented(folders: readonly PurchaseFolder[], venueId: string): string {
  const waiting = folders.filter(
    ({ facts, costs, won }) =>
      won !== null && facts.venueId === venueId && !costs.some(({ cost }) => cost === 'hammer'),
  );
  return demoInvoice(
    waiting.flatMap(({ facts, won, expected }) =>
      won === null ? [] : [{ facts, won: won.date, lines: expected?.lines ?? [] }],
    ),
  );
}

const EXAMPLE =
  'Invoice\tVIN\tLot\tDate\tDescription\tAmount\n40117\t1LX3H4C21M0104471\t218\t11/28/2026\tBuy fee\t$450.00';

/** A venue's invoice or statement in: read, matched to the folders, looked at, and booked line by line. */
export function InvoicesPart() {
  const { setup } = useWorkspace();
  const { folders } = useBooks();
  const [venueId, setVenueId] = useState<string | undefined>(setup.venues[0]?.id);
  const [opened, setOpened] = useState<Opened>();
  const [fault, setFault] = useState<string>();
  const [text, setText] = useState('');
  const venue = setup.venues.find(({ id }) => id === venueId);

  const take = (opening: ReturnType<typeof openTable>, file: string) => {
    const table = openInvoice(opening);
    setFault(table.ok ? undefined : `${file}: ${table.message}`);
    setOpened(table.ok ? { table: table.value, file } : undefined);
  };
  return (
    <>
      <header class="stack">
        <h1>Invoices</h1>
        <p class="prose">
          A venue’s invoice or statement as CSV, or its rows pasted from a spreadsheet. Every amount is compared with
          the folder and the fee schedule of that day. Nothing is recorded until you say so.
        </p>
      </header>
      {fault !== undefined && (
        <p class="note warning" role="alert">
          {fault} Nothing was recorded.
        </p>
      )}
      <section class="panel stack no-print">
        <div class="fields">
          <ChoiceInput
            label="Venue"
            value={venueId}
            none="choose one"
            choices={setup.venues.map(({ id, name }) => ({ value: id, label: name }))}
            onCommit={(id) => {
              setVenueId(id);
              setOpened(undefined);
            }}
          />
        </div>
        {setup.venues.length === 0 && (
          <p>
            Setup has no venue yet. An invoice is compared with the venue’s fees: <a href="#/setup/venues">add one</a>.
          </p>
        )}
        {venue !== undefined && opened === undefined && (
          <RowsOrFile
            label="Rows of the invoice"
            example={EXAMPLE}
            text={text}
            onText={setText}
            choose="Choose a CSV file"
            accept={TABLE_FILES}
            onFile={async (file) => take(await openFile(file), file.name)}
            onRows={(rows) => take(openTable(rows), 'The pasted rows')}
          >
            {text === '' && setup.store.name === DEMO_STORE && (
              <button type="button" class="plain" onClick={() => setText(invented(folders, venue.id))}>
                Try a made-up invoice
              </button>
            )}
          </RowsOrFile>
        )}
        {opened !== undefined && (
          <p class="row">
            <strong>{opened.file}</strong>
            <button type="button" class="plain" onClick={() => setOpened(undefined)}>
              Another invoice
            </button>
          </p>
        )}
      </section>
      {venue !== undefined && opened !== undefined && (
        <InvoiceReview
          key={`${venue.id}/${opened.file}`}
          venue={venue}
          table={opened.table}
          file={opened.file}
          onDone={() => {
            setOpened(undefined);
            setText('');
          }}
        />
      )}
      <UndonePart />
    </>
  );
}
