import { useMemo, useState } from 'preact/hooks';
import { termsInWords } from '../../../src/domain/accounts/terms.ts';
import { type SaidOfLine, withSaid } from '../../../src/domain/books/invoice/invoice-line.ts';
import type { JudgedLine } from '../../../src/domain/books/invoice/judge-line.ts';
import { type Links, linkedWordings } from '../../../src/domain/books/invoice/linked-wordings.ts';
import {
  canBeTicked,
  type MatchedCar,
  matchInvoice,
  startsTicked,
} from '../../../src/domain/books/invoice/match-invoice.ts';
import type { LotFacts, LotId } from '../../../src/domain/lot/lot.ts';
import { cents } from '../../../src/domain/money/cents.ts';
import { formatMoney } from '../../../src/domain/money/format-money.ts';
import { matchVenue } from '../../../src/domain/setup/match-venue.ts';
import type { Venue } from '../../../src/domain/setup/venue.ts';
import { plainWords } from '../../../src/domain/text/plain-words.ts';
import type { LocalDate } from '../../../src/domain/time/local-date.ts';
import { type InvoiceColumn, mapInvoice, mappingFault, mappingOf } from '../../../src/intake/invoices/map-invoice.ts';
import { readInvoice } from '../../../src/intake/invoices/read-invoice.ts';
import type { Table } from '../../../src/intake/open-table.ts';
import type { BookedHappening } from '../../../src/journal/happenings/books.ts';
import { DateInput } from '../../../src/ui/inputs/date-input.tsx';
import { useWorkspace } from '../../../src/ui/workspace.ts';
import { termsBy } from '../../../src/views/books/payables-of.ts';
import { countWords } from '../../../src/views/words/count-words.ts';
import { type Books, useBooks } from '../use-books.ts';
import { InvoiceCars } from './invoice-cars.tsx';
import { InvoiceColumns } from './invoice-columns.tsx';

interface InvoiceReviewProps {
  readonly venue: Venue;
  readonly table: Table;
  readonly file: string;
  readonly onDone: () => void;
}

/** The invoice on one side, the folders on the other, and a tick for each line that is to be booked. */
export function InvoiceReview({ venue, table, file, onDone }: InvoiceReviewProps) {
  const { store, setup, say } = useWorkspace();
  const books = useBooks();
  const { today } = books;
  const remembered = books.state.mappings.get(venue.id);
  const [edited, setEdited] = useState<readonly InvoiceColumn[]>();
  const columns = useMemo(() => edited ?? mapInvoice(table, remembered), [edited, table, remembered]);
  const [chosen, setChosen] = useState<ReadonlyMap<string, LotId | null>>(new Map());
  const [ticks, setTicks] = useState<ReadonlyMap<string, boolean>>(new Map());
  const [said, setSaid] = useState<ReadonlyMap<string, SaidOfLine>>(new Map());
  const [invoiceDay, setInvoiceDay] = useState<LocalDate | undefined>(today);
  const [due, setDue] = useState<LocalDate>();
  const [busy, setBusy] = useState(false);
  const terms = useMemo(() => termsBy(setup).get(plainWords(venue.name)), [setup, venue]);
  const bad = mappingFault(columns);
  const read = useMemo(() => readInvoice(table, columns, today), [table, columns, today]);
  const folders = useMemo(() => carsOf(books, setup.venues), [books, setup]);
  const lines = useMemo(() => read.lines.map((line) => withSaid(line, said.get(line.id))), [read, said]);
  const learned = useMemo(() => linkedWordings(folders, venue.id), [folders, venue]);
  const [linked, setLinked] = useState<Links>(new Map());
  const links = useMemo(() => new Map([...learned, ...linked]), [learned, linked]);
  const cars = useMemo(
    () => matchInvoice(lines, folders, venue.id, chosen, links),
    [lines, folders, venue, chosen, links],
  );
  const agreeing = read.sums.filter(({ off }) => off === 0).length;
  const isUndated = lines.some(({ date, dayDoubt }) => date === undefined && dayDoubt === undefined);
  const sayOf = (id: string, more: SaidOfLine) => {
    setSaid((before) => new Map(before).set(id, { ...before.get(id), ...more }));
    // What it was checked as is not what it is now.
    setTicks((before) => new Map([...before].filter(([line]) => line !== id)));
  };
  const isTicked = (car: MatchedCar, judged: JudgedLine): boolean =>
    car.match.lot !== null && canBeTicked(judged) && (ticks.get(judged.line.id) ?? startsTicked(car.match, judged));
  const ticked = cars.flatMap((car) =>
    car.lines.flatMap((judged) =>
      isTicked(car, judged) && car.match.lot !== null ? [{ lot: car.match.lot, judged }] : [],
    ),
  );
  const costs = ticked.filter(({ judged }) => judged.line.what === 'cost');
  const payments = ticked.filter(({ judged }) => judged.line.what === 'payment');
  const sum = (some: typeof ticked) => formatMoney(cents(some.reduce((all, { judged }) => all + judged.line.cents, 0)));

  const book = async () => {
    setBusy(true);
    const mapping = mappingOf(columns);
    const isNew = JSON.stringify(mapping) !== JSON.stringify(remembered);
    const invoice: BookedHappening = {
      kind: 'invoice-confirmed',
      venueId: venue.id,
      payee: venue.name,
      document: { file: file.slice(0, 260) },
      costs: costs.map(({ lot, judged: { line, expected } }) => ({
        lot,
        cost: line.cost,
        label: line.label,
        cents: line.cents,
        date: line.date ?? invoiceDay ?? today,
        ...(expected !== null && { against: expected.key }),
        ...(line.number !== undefined && { number: line.number }),
        ...(due !== undefined && { due }),
      })),
      payments: payments.map(({ lot, judged: { line } }) => ({
        lot,
        cents: line.cents,
        date: line.date ?? invoiceDay ?? today,
        ...(line.number !== undefined && { number: line.number }),
      })),
    };
    const written = await store.book(
      ...(isNew
        ? [{ kind: 'invoice-mapped' as const, venueId: venue.id, mapping: { ...remembered, ...mapping } }]
        : []),
      invoice,
    );
    setBusy(false);
    say(
      written.ok ? `${countWords(ticked.length, 'line', 'lines')} recorded from ${file}.` : written.message,
      written.ok ? written.value.at(-1)?.id : undefined,
    );
    if (written.ok) onDone();
  };

  return (
    <>
      <InvoiceColumns table={table} columns={columns} onChange={setEdited} />
      {bad !== null && <p class="note warning">{bad}</p>}
      {read.faults.length > 0 && (
        <section class="note warning stack" aria-labelledby="bad-rows">
          <h2 id="bad-rows">{countWords(read.faults.length, 'row needs', 'rows need')} checking</h2>
          <ul class="plain-list">
            {read.faults.map(({ row, message }) => (
              <li key={`${row}${message}`}>
                Row {row}: {message}
              </li>
            ))}
          </ul>
        </section>
      )}
      {agreeing > 0 && (
        <p class="quiet">
          {countWords(agreeing, 'total of the file agrees', 'totals of the file agree')} with the rows above.
        </p>
      )}
      {bad === null && (
        <>
          <div class="panel fields no-print">
            {isUndated && (
              <DateInput
                label="Date of the invoice"
                value={invoiceDay}
                onCommit={setInvoiceDay}
                hint="Rows without a date are recorded on this day."
                required
              />
            )}
            <DateInput
              label="Due on"
              value={due}
              onCommit={setDue}
              hint={
                terms === undefined
                  ? `Blank: on the day of each bill. ${venue.name} has no terms yet; set them under Payables.`
                  : `Blank: by the terms of ${venue.name}, ${termsInWords(terms)}`
              }
            />
          </div>
          {(['exact', 'near', 'none'] as const).map((how) => (
            <InvoiceCars
              key={how}
              how={how}
              cars={cars.filter((car) => car.match.how === how)}
              isTicked={isTicked}
              onTick={(id, on) => setTicks((before) => new Map(before).set(id, on))}
              onLink={(words, name) => setLinked((before) => new Map(before).set(words, name))}
              onTurn={(id, what) => sayOf(id, { what })}
              onDay={(id, date) => sayOf(id, { date })}
              onChoose={(id, lot) => setChosen((before) => new Map(before).set(id, lot))}
            />
          ))}
          <div class="panel row apart book-invoice">
            <span>
              {countWords(costs.length, 'cost', 'costs')}, {sum(costs)}
              {payments.length > 0 && `, and ${countWords(payments.length, 'payment', 'payments')}, ${sum(payments)}`}
            </span>
            <button type="button" class="main" disabled={busy || ticked.length === 0} onClick={book}>
              Record {countWords(ticked.length, 'checked line', 'checked lines')}
            </button>
          </div>
        </>
      )}
    </>
  );
}

/** The folders as an invoice sees them: what tells the car, what was expected, what is booked. */
function carsOf({ folders, state }: Books, venues: readonly Venue[]) {
  // A lot may name its venue only in words.
  const venueOf = ({ venueId, venueName = '' }: LotFacts) => {
    const named = matchVenue(venueName, venues);
    return venueId ?? (named.ok ? named.value : undefined);
  };
  const numbers = new Map([...state.costs, ...state.payments].map(({ key, document }) => [key, document?.number]));
  return folders.map(({ lot, facts, won, expected, costs, payments, owed }) => ({
    lot,
    vin: facts.vin,
    lotNumber: facts.lotNumber,
    venueId: venueOf(facts),
    won: won?.date,
    hammer: won?.hammer,
    expected: expected?.lines ?? [],
    costs: costs.map((cost) => ({ ...cost, number: numbers.get(cost.key) })),
    payments: payments.map((payment) => ({
      ...payment,
      number: numbers.get(payment.key),
      noted: 'notedAfterSale' in payment,
    })),
    owed,
  }));
}
