import type { PurchaseFolder } from '../../../src/domain/books/folder/folder.ts';
import { formatMoney } from '../../../src/domain/money/format-money.ts';
import type { NotedFloorMove, NotedPayment } from '../../../src/journal/states/books-state.ts';
import { ScrollX } from '../../../src/ui/tables/scroll-x.tsx';
import { useWorkspace } from '../../../src/ui/workspace.ts';
import type { StepPayment } from '../../../src/views/books/after-sale-of.ts';
import { dateInWords } from '../../../src/views/words/date-words.ts';

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
          <table class="ledger">
            <thead>
              <tr>
                <th scope="col">What</th>
                <th scope="col">Date</th>
                <th scope="col" class="number">
                  Amount
                </th>
                <th scope="col">Paper</th>
                <th scope="col">Entered by</th>
                <th scope="col" class="no-print">
                  <span class="visually-hidden">Undo</span>
                </th>
              </tr>
            </thead>
            <tbody>
              {all.map((one) => (
                <tr key={one.key}>
                  <th scope="row">
                    {one.what}
                    {one.payee && <span class="quiet small block">{one.payee}</span>}
                  </th>
                  <td class="day">{dateInWords(one.date)}</td>
                  <td class="number">{formatMoney(one.cents)}</td>
                  <td class="small">{one.document?.number ?? one.document?.file ?? ''}</td>
                  <td class="small">
                    {one.author}
                    {one.tapped && <span class="quiet block">under To do</span>}
                  </td>
                  <td class="no-print">
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
                  </td>
                </tr>
              ))}
            </tbody>
          </table>
        </ScrollX>
      )}
    </section>
  );
}
