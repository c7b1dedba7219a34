import { useMemo, useState } from 'preact/hooks';
import { readTerms, type Terms, termsInWords } from '../../../src/domain/accounts/terms.ts';
import { BUCKETS, type Bucket } from '../../../src/domain/books/payables/ageing.ts';
import type { OpenBill, VendorPayables } from '../../../src/domain/books/payables/payables.ts';
import { type Cents, cents } from '../../../src/domain/money/cents.ts';
import { formatMoney } from '../../../src/domain/money/format-money.ts';
import { plainWords } from '../../../src/domain/text/plain-words.ts';
import { PAYABLE_COLUMNS, zoneColumn } from '../../../src/intake/books/books-columns.ts';
import { booksToCsv } from '../../../src/intake/books/books-to-csv.ts';
import { ReadInput } from '../../../src/ui/inputs/read-input.tsx';
import { saveFile } from '../../../src/ui/save-file.ts';
import { Ledger } from '../../../src/ui/tables/ledger.tsx';
import { ScrollX } from '../../../src/ui/tables/scroll-x.tsx';
import { useWorkspace } from '../../../src/ui/workspace.ts';
import { payablesOf, paymentsBy, termsBy } from '../../../src/views/books/payables-of.ts';
import { dateInWords } from '../../../src/views/words/date-words.ts';
import { decoded } from '../decoded.ts';
import { SearchBox } from '../search-box.tsx';
import { useBooks } from '../use-books.ts';
import { PayForm } from './pay-form.tsx';

/** What is owed to whom and since when, over all cars, and one payment for many bills. @param wanted the vendor to open */
export function PayablesPart({ wanted }: { wanted: string }) {
  const { setup, saveSetup, say } = useWorkspace();
  const { folders, today } = useBooks();
  const [words, setWords] = useState('');
  const [chosen, setChosen] = useState<string | undefined>(wanted === '' ? undefined : decoded(wanted));
  const shown = useMemo(() => payablesOf(folders, setup, today), [folders, setup, today]);
  const { vendors, nameOf, sharesOf, inOrder, ageing } = shown;
  const paid = useMemo(() => paymentsBy(folders), [folders]);
  const isFound = ({ vendor, bills }: VendorPayables) =>
    plainWords(
      [nameOf(vendor), ...bills.map(({ number }) => number ?? ''), ...(paid.get(vendor) ?? [])].join(' '),
    ).includes(plainWords(words));
  // Whoever looks for a check or a bill means one that is paid, too.
  const open = vendors.filter(
    ({ vendor, owed, unapplied }) => owed !== 0 || unapplied !== 0 || (words !== '' && vendor !== ''),
  );
  const found = open.filter(isFound);
  const vendor = found.find((one) => one.vendor === chosen);
  const termsOf = (name: string): Terms | undefined =>
    setup.vendors?.find((one) => plainWords(one.name) === name)?.terms;
  const setTerms = async (name: string, terms: Terms | undefined) => {
    const others = (setup.vendors ?? []).filter((one) => plainWords(one.name) !== name);
    const next = terms === undefined ? others : [...others, { name: nameOf(name), terms }];
    const kept = await saveSetup({ vendors: next });
    say(kept.ok ? `Terms of ${nameOf(name)} saved.` : kept.message, kept.ok ? kept.value.entry : undefined);
  };
  const inForce = termsBy(setup);
  const termsInput = (name: string) => (
    <ReadInput<Terms>
      label={`Terms of ${nameOf(name)}`}
      value={termsOf(name)}
      write={termsInWords}
      read={readTerms}
      placeholder="net 30"
      onCommit={(terms) => setTerms(name, terms)}
    />
  );
  const saveCsv = () => {
    const rows = inOrder.map((bill) => ({ bill, vendor: nameOf(bill.vendor) }));
    const text = booksToCsv([...PAYABLE_COLUMNS, zoneColumn(setup.store.zone)], rows);
    saveFile(new Blob([text], { type: 'text/csv;charset=utf-8' }), `headroom-payables-${today}.csv`);
  };
  return (
    <>
      <header class="row apart">
        <div>
          <h1>Payables</h1>
          <p class="prose">
            What is owed on {dateInWords(today)}, by days past due. A bill is due on its own due date, else by its
            vendor’s terms. A venue’s price and fees are here once its invoice is recorded.
          </p>
        </div>
        <div class="row no-print">
          <button type="button" onClick={saveCsv} disabled={inOrder.length === 0}>
            Open bills, as CSV
          </button>
          <button type="button" onClick={() => print()}>
            Print
          </button>
        </div>
      </header>
      {open.length === 0 ? (
        <p>Nothing is owed. A bill comes here when it is recorded as not paid yet, in a folder or from an invoice.</p>
      ) : (
        <>
          <div class="no-print">
            <SearchBox label="Search vendors, bill and check numbers" value={words} onChange={setWords} />
          </div>
          <ScrollX label="Owed by vendor">
            <Ledger
              class="fits-narrow"
              rows={found}
              rowKey={(one) => one.vendor}
              columns={[
                {
                  label: 'Vendor',
                  heads: true,
                  cell: (one) => (
                    <>
                      <button
                        type="button"
                        class="plain in-print"
                        aria-expanded={one.vendor === chosen}
                        onClick={() => setChosen(one.vendor === chosen ? undefined : one.vendor)}
                      >
                        {nameOf(one.vendor)}
                      </button>
                      <span class="small block narrow-only">{agedInWords(one)}</span>
                      {one.remarks.map((remark) => (
                        <span key={remark} class="small quiet block">
                          {remark}
                        </span>
                      ))}
                    </>
                  ),
                  total: 'Total',
                },
                {
                  label: 'Terms',
                  term: 'terms',
                  class: 'wide-only',
                  cell: (one) => {
                    const terms = inForce.get(one.vendor);
                    return (
                      <>
                        <span class="no-print">{termsInput(one.vendor)}</span>
                        <span class="print-only">{terms === undefined ? 'none' : termsInWords(terms)}</span>
                      </>
                    );
                  },
                },
                ...BUCKETS.map((bucket) => ({
                  label: bucketInWords(bucket),
                  term: 'days-past-due' as const,
                  number: true as const,
                  class: 'wide-only',
                  cell: (one: VendorPayables) => amount(one.ageing[bucket]),
                  total: amount(ageing[bucket]),
                })),
                {
                  label: 'Not set against a bill',
                  term: 'not-set-against',
                  number: true,
                  class: 'wide-only',
                  cell: (one) => amount(cents(-one.unapplied)),
                  total: amount(cents(-shown.unapplied)),
                },
                {
                  label: 'Net',
                  term: 'net-owed',
                  number: true,
                  cell: (one) => formatMoney(one.net),
                  total: formatMoney(shown.net),
                },
              ]}
            />
          </ScrollX>
          <OpenBills bills={inOrder} nameOf={nameOf} />
          {vendor === undefined ? (
            <p class="quiet small no-print">Press a vendor to see and pay its bills.</p>
          ) : (
            <div class="no-print">
              <PayForm key={vendor.vendor} name={nameOf(vendor.vendor)} bills={vendor.bills} sharesOf={sharesOf}>
                <div class="fields narrow-only">{termsInput(vendor.vendor)}</div>
              </PayForm>
            </div>
          )}
        </>
      )}
    </>
  );
}

/** On paper, where no vendor can be pressed, every open bill is listed in the order in which they are due. */
function OpenBills({ bills, nameOf }: { bills: readonly OpenBill[]; nameOf: (vendor: string) => string }) {
  return (
    <div class="print-only">
      <Ledger
        caption="Open bills, by due date"
        rows={bills}
        rowKey={({ id, vendor }) => `${id} ${vendor}`}
        columns={[
          { label: 'Due', class: 'day', cell: ({ dueOn }) => dateInWords(dueOn) },
          {
            label: 'Days past due',
            number: true,
            cell: ({ daysPastDue }) => (daysPastDue > 0 ? daysPastDue : ''),
          },
          { label: 'Vendor', cell: ({ vendor }) => nameOf(vendor) },
          { label: 'Bill no.', cell: ({ number }) => number ?? 'none' },
          { label: 'Date', class: 'day', cell: ({ date }) => dateInWords(date) },
          { label: 'Bill', number: true, cell: (bill) => formatMoney(bill.cents) },
          { label: 'Still owed', number: true, cell: ({ open }) => formatMoney(open) },
        ]}
      />
    </div>
  );
}

const bucketInWords = (bucket: Bucket): string =>
  bucket === 'current' ? 'Not due' : bucket === 'over 90' ? 'Over 90' : bucket.replace('-', '–');

/** In one line, where there is no room for columns. */
const agedInWords = ({ ageing }: VendorPayables): string =>
  BUCKETS.flatMap((bucket) =>
    ageing[bucket] === 0 ? [] : `${bucketInWords(bucket)} ${formatMoney(ageing[bucket])}`,
  ).join(' · ');

/** Nothing is left blank, so that what is late stands out. */
const amount = (of: Cents): string => (of === 0 ? '' : formatMoney(of));
