import type { PurchaseFolder } from '../../../src/domain/books/folder/folder.ts';
import { formatMoney } from '../../../src/domain/money/format-money.ts';
import type { NotedFloorMove, NotedPayment } from '../../../src/journal/states/books-state.ts';
import { Ledger } from '../../../src/ui/tables/ledger.tsx';
import { ScrollX } from '../../../src/ui/tables/scroll-x.tsx';
import { useWorkspace } from '../../../src/ui/workspace.ts';
import type { StepPayment } from '../../../src/views/books/after-sale-of.ts';
import { dateInWords } from '../../../src/views/words/date-words.ts';
import { BookedLineActs } from './booked-line-acts.tsx';

/** What was paid, by whom and when. */
export function PaymentsTable({ folder }: { folder: PurchaseFolder }) {
  const { undo, say } = useWorkspace();
  // The folder's money came from the books, so each move has the entry that can be undone.
  const payments = (folder.payments as readonly (NotedPayment | StepPayment)[]).map((payment) => ({
    ...payment,
    what: payment.cents < 0 ? 'Refund' : 'Paid by the bank',
    tapped: 'notedAfterSale' in payment,
  }));
  const moves = (folder.floor as readonly NotedFloorMove[]).map((move) => ({
    ...move,
    what: move.move === 'draw' ? 'Floor-plan advance' : 'Floor-plan payoff',
    payee: undefined,
    tapped: false,
  }));
  const all = [...payments, ...moves].sort((a, b) => (a.date < b.date ? -1 : 1));
  return (
    <section class="stack" aria-labelledby="folder-money">
      <h2 id="folder-money">Payment and floor plan</h2>
      {all.length === 0 ? (
        <p class="quiet">Nothing paid yet.</p>
      ) : (
        <ScrollX label="Payment and floor plan">
          <Ledger
            rows={all}
            rowKey={({ key }) => key}
            columns={[
              {
                label: 'What',
                heads: true,
                cell: ({ what, payee }) => (
                  <>
                    {what}
                    {payee && <span class="quiet small block">{payee}</span>}
                  </>
                ),
              },
              { label: 'Date', class: 'day', cell: ({ date }) => dateInWords(date) },
              { label: 'Amount', number: true, cell: (one) => formatMoney(one.cents) },
              {
                label: 'Paper',
                class: 'small',
                cell: ({ document }) => document?.number ?? document?.file ?? '',
              },
              {
                label: 'Entered by',
                class: 'small',
                cell: ({ author, tapped }) => (
                  <>
                    {author}
                    {tapped && <span class="quiet block">under To do</span>}
                  </>
                ),
              },
              {
                label: 'Undo',
                quietHead: true,
                class: 'no-print',
                cell: (one) =>
                  'move' in one || one.tapped ? (
                    <button
                      type="button"
                      class="plain small"
                      aria-label={`Undo: ${one.what}, ${formatMoney(one.cents)}`}
                      onClick={async () => {
                        const taken = await undo(one.entry);
                        say(taken.ok ? 'Undone.' : taken.message, taken.ok ? taken.value.entry : undefined);
                      }}
                    >
                      Undo
                    </button>
                  ) : (
                    <BookedLineActs line={one} what={one.what} />
                  ),
              },
            ]}
          />
        </ScrollX>
      )}
    </section>
  );
}
