import { venuePlaces } from '../../../src/domain/after-sale/venue-place.ts';
import type { PurchaseFolder } from '../../../src/domain/books/folder/folder.ts';
import { cents } from '../../../src/domain/money/cents.ts';
import { formatMoney } from '../../../src/domain/money/format-money.ts';
import { certificateFault } from '../../../src/domain/setup/certificate.ts';
import { usePageSubject } from '../../../src/ui/page-subject.ts';
import { TermLink } from '../../../src/ui/term-link.tsx';
import { useWorkspace } from '../../../src/ui/workspace.ts';
import { folderName } from '../../../src/views/books/folder-name.ts';
import { dateInWords } from '../../../src/views/words/date-words.ts';
import type { TermId } from '../../../src/views/words/glossary.ts';
import { STAGE_WORDS } from '../folder-cells.tsx';
import { useBooks } from '../use-books.ts';
import { BillForm } from './bill-form.tsx';
import { FloorForm } from './floor-form.tsx';
import { FolderLines } from './folder-lines.tsx';
import { OutcomeForm } from './outcome-form.tsx';
import { PapersPart } from './papers-part.tsx';
import { PaymentForm } from './payment-form.tsx';
import { PaymentsTable } from './payments-table.tsx';
import { SettlementsPart } from './settlements-part.tsx';

/** One purchase: expected beside actual, what was paid, what is missing, how it went away. */
export function FolderScreen({ id }: { id: string }) {
  const { folders } = useBooks();
  const { setup } = useWorkspace();
  const folder = folders.find(({ lot }) => lot === id);
  if (folder === undefined) {
    return (
      <section class="stack">
        <h1>No such folder</h1>
        <p>
          A folder opens when a lot is marked as won. <a href="#/books">All folders</a>
        </p>
      </section>
    );
  }
  const fault =
    folder.won === null || folder.stage === 'undone'
      ? null
      : certificateFault(venuePlaces(setup)(folder.facts).venue, setup.certificates ?? [], folder.won.date);
  return (
    <>
      <FolderHead folder={folder} />
      {fault !== null && (
        <p class="note warning">
          {fault} <a href="#/setup/certificates">Certificates</a>
        </p>
      )}
      {folder.stage === 'not-won' && isBookedAsWon(folder) && (
        <p class="note warning">
          The result no longer says this lot was won, but amounts are recorded for it. Undo those, or correct the
          result.
        </p>
      )}
      {folder.stage === 'undone' && folder.outcome !== undefined && (
        <p class="note warning">
          This purchase was canceled, but a sale of the car is recorded. The books leave the sale out. Undo one of the
          two.
        </p>
      )}
      <FolderLines folder={folder} />
      <SettlementsPart folder={folder} />
      <PaymentsTable folder={folder} />
      <PapersPart folder={folder} />
      <section class="stack no-print" aria-labelledby="book-something">
        <h2 id="book-something">Record</h2>
        <div class="books-forms">
          <BillForm folder={folder} />
          <PaymentForm folder={folder} />
          <FloorForm folder={folder} />
          <OutcomeForm folder={folder} />
        </div>
        <p class="quiet small prose">
          Your accountant decides what counts as inventory, when income is earned and how it is taxed. The names of the
          accounts are in <a href="#/setup/accounts">Setup › Accounts</a>.
        </p>
      </section>
    </>
  );
}

/** More than the money by which a dispute about a lot that was not won ended. */
const isBookedAsWon = ({ costs, payments, floor }: PurchaseFolder): boolean =>
  costs.some(({ dispute }) => dispute === undefined) || payments.some(({ cents }) => cents > 0) || floor.length > 0;

function FolderHead({ folder }: { folder: PurchaseFolder }) {
  const { facts, won, stage, gross, expected, outcome, open, notBilled = 0, floorOwed } = folder;
  usePageSubject(folderName(facts));
  const under = [
    facts.vin && `VIN ${facts.vin}`,
    facts.venueName,
    facts.seller,
    won?.bidder && `bought by ${won.bidder}`,
  ];
  return (
    <header class="stack">
      <p class="small no-print">
        <a href="#/books">All folders</a> · <a href={`#/lot/${folder.lot}`}>The lot’s worksheet</a> ·{' '}
        <a href={`#/won/${folder.lot}`}>After the sale</a> · <a href={`#/history/${folder.lot}`}>Full history</a>
      </p>
      <h1>{folderName(facts)}</h1>
      <p class="quiet">{under.filter(Boolean).join(' · ')}</p>
      <div class="folder-head">
        <p>
          <span class="figure-large">{won === null ? '–' : formatMoney(won.hammer)}</span>
          <span class="quiet"> {won === null ? '' : `won ${dateInWords(won.date)}`}</span>
        </p>
        <dl>
          <Figure term="folder" what="Status" value={STAGE_WORDS[stage]} />
          <Figure
            term={open < 0 ? 'refund-due' : 'to-pay'}
            what={open < 0 ? 'Overpaid or refund due' : 'Still owed'}
            value={formatMoney(cents(Math.abs(open)))}
          />
          {notBilled > 0 && (
            <Figure term="not-billed" what="Expected, no bill yet" value={formatMoney(cents(notBilled))} />
          )}
          {folder.arrivedOn !== undefined && (
            <Figure term="folder" what="Delivered" value={dateInWords(folder.arrivedOn)} />
          )}
          {floorOwed !== 0 && (
            <Figure term="on-the-floor-plan" what="On the floor plan" value={formatMoney(floorOwed)} />
          )}
          {outcome !== undefined && (
            <Figure term="gross" what={`Sold ${dateInWords(outcome.date)}`} value={formatMoney(outcome.priceCents)} />
          )}
          {gross !== null && (
            <Figure
              term="gross"
              what="Gross so far"
              value={gross < 0 ? `a loss of ${formatMoney(cents(-gross))}` : formatMoney(gross)}
            />
          )}
          {stage !== 'undone' && expected?.gross != null && (
            <Figure term="expected-gross" what="Expected gross" value={formatMoney(expected.gross)} />
          )}
        </dl>
      </div>
    </header>
  );
}

const Figure = ({ term, what, value }: { term: TermId; what: string; value: string }) => (
  <div>
    <dt>
      <TermLink term={term}>{what}</TermLink>
    </dt>
    <dd class="figure">{value}</dd>
  </div>
);
