import type { ComparedLine } from '../../../src/domain/books/folder/compare-lines.ts';
import { rangeInWords } from '../../../src/domain/books/folder/expected.ts';
import type { PurchaseFolder } from '../../../src/domain/books/folder/folder.ts';
import { sumCents } from '../../../src/domain/money/cents.ts';
import { formatMoney } from '../../../src/domain/money/format-money.ts';
import type { NotedCost } from '../../../src/journal/states/books-state.ts';
import { ScrollX } from '../../../src/ui/tables/scroll-x.tsx';
import { dateInWords } from '../../../src/views/words/date-words.ts';
import { useBook } from '../use-book.ts';
import { useBooks } from '../use-books.ts';
import { BookedLineActs } from './booked-line-acts.tsx';

/** Expected beside actual, with the difference and why. */
export function FolderLines({ folder }: { folder: PurchaseFolder }) {
  const { lines, expected, expectedCents, actualCents } = folder;
  const { today } = useBooks();
  const book = useBook();
  // Only of what was billed: a bill that has not come is no saving.
  const billed = lines.flatMap(({ difference }) => difference ?? []);
  const waiting = lines.filter(
    (line) => line.actual.length === 0 && (line.cost === 'hammer' || line.cost === 'fee') && line.expected !== null,
  );
  const bookSale = () =>
    book(
      {
        kind: 'costs-booked',
        date: folder.won?.date ?? today,
        paid: 'owed',
        ...(folder.facts.venueName && { payee: folder.facts.venueName }),
        lines: waiting.flatMap(({ expected: line }) =>
          line === null
            ? []
            : { lot: folder.lot, cost: line.cost, label: line.label, cents: line.cents, against: line.key },
        ),
      },
      'Price and fees recorded as expected.',
    );
  return (
    <section class="stack" aria-labelledby="folder-lines">
      <h2 id="folder-lines">Expected vs. actual</h2>
      {(expected?.problems ?? []).map((problem) => (
        <p key={problem} class="note">
          {problem}
        </p>
      ))}
      <ScrollX label="Expected vs. actual">
        <table class="ledger folder-lines">
          <thead>
            <tr>
              <th scope="col">Line</th>
              <th scope="col" class="number">
                Expected
              </th>
              <th scope="col" class="number">
                Actual
              </th>
              <th scope="col" class="number">
                Difference
              </th>
              <th scope="col">Why</th>
            </tr>
          </thead>
          <tbody>
            {lines.map((line) => (
              <Line key={line.key} line={line} folder={folder} />
            ))}
            <tr class="total">
              <td>Total</td>
              <td class="number">{expectedCents === null ? '–' : formatMoney(expectedCents)}</td>
              <td class="number">{formatMoney(actualCents)}</td>
              <td class="number">{billed.length === 0 ? '' : formatMoney(sumCents(billed), { sign: 'always' })}</td>
              <td class="small quiet">{billsToCome(lines)}</td>
            </tr>
          </tbody>
        </table>
      </ScrollX>
      {waiting.length > 0 && folder.won !== null && (
        <p class="row no-print">
          <button type="button" onClick={bookSale}>
            Record price and fees as expected
          </button>
          <span class="quiet small">Only if no invoice will come. An invoice shows what the venue really charged.</span>
        </p>
      )}
    </section>
  );
}

function billsToCome(lines: readonly ComparedLine[]): string {
  const left = lines.filter(({ actual }) => actual.length === 0).length;
  return left === 0
    ? 'All expected bills are in.'
    : `${left} expected ${left === 1 ? 'line has' : 'lines have'} no bill yet.`;
}

function Line({ line, folder }: { line: ComparedLine; folder: PurchaseFolder }) {
  const { expected, actual, actualCents, difference, why, look } = line;
  return (
    <tr class={look ? 'look' : undefined}>
      <th scope="row">{line.label}</th>
      <td class="number">
        {expected === null ? <span class="missing">not expected</span> : formatMoney(expected.cents)}
        {expected?.range && <span class="quiet small block">{rangeInWords(expected.range)}</span>}
      </td>
      <td class="number">
        {actualCents === null ? <span class="missing">no bill</span> : formatMoney(actualCents)}
        {actual.map(({ key }) => (
          <Bill key={key} bill={bookedLine(folder, key)} />
        ))}
      </td>
      <td class="number">
        {difference === null ? '' : difference === 0 ? '0' : formatMoney(difference, { sign: 'always' })}
      </td>
      <td class="why">
        {look && <span class="tag act">Check</span>} {why}
      </td>
    </tr>
  );
}

/** The folder's costs came from the books, so each has who booked it. */
const bookedLine = (folder: PurchaseFolder, key: string): NotedCost | undefined =>
  (folder.costs as readonly NotedCost[]).find((cost) => cost.key === key);

/** Where an amount comes from, and what can be done about it. */
function Bill({ bill }: { bill: NotedCost | undefined }) {
  if (bill === undefined) return null;
  const paper = bill.document?.number ?? bill.document?.file;
  const words = [dateInWords(bill.date), bill.payee, paper, bill.corrected && 'corrected'].filter(Boolean).join(' · ');
  return (
    <span class="small quiet block">
      {words} <BookedLineActs line={bill} what={bill.label} />
    </span>
  );
}
