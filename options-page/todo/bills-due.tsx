import { useMemo } from 'preact/hooks';
import { formatMoney } from '../../src/domain/money/format-money.ts';
import type { LocalDate } from '../../src/domain/time/local-date.ts';
import type { Store } from '../../src/store/store.ts';
import type { StoreChange } from '../../src/store/write/touched.ts';
import { useLotsAfterSale } from '../../src/ui/hooks/use-after-lots.ts';
import { useFromStore } from '../../src/ui/hooks/use-from-store.ts';
import { useWorkspace } from '../../src/ui/workspace.ts';
import { billsWith, dueBillsOf } from '../../src/views/books/due-bills.ts';
import { countWords } from '../../src/views/words/count-words.ts';

const read = (store: Store) => store.books();
const concerns = ({ books, lots }: StoreChange) => books || lots === 'many';

/** Bills over all cars that are overdue or due within a week, each leading to where one payment pays many. */
export function BillsDue({ search, today }: { search: string; today: LocalDate }) {
  const { setup } = useWorkspace();
  const books = useFromStore(read, concerns);
  const lots = useLotsAfterSale();
  const due = useMemo(() => books && lots && dueBillsOf(lots, books, setup, today), [books, lots, setup, today]);
  if (due === null || due.bills.length + due.later.bills === 0) return null;
  const shown = search === '' ? due.bills : billsWith(due.bills, search);
  if (shown.length === 0 && search !== '') return null;
  return (
    <section class="todo-group stack">
      <h2>
        Bills due <span class="quiet small">{shown.length > 0 && shown.length.toLocaleString('en-US')}</span>
      </h2>
      {shown.length > 0 && (
        <ul class="todo-rows">
          {shown.map(({ key, what, more, late, hash }) => (
            <li key={key} class={late ? 'todo-row late' : 'todo-row'}>
              <span class="strong">{what}</span>
              <span class="todo-what">
                {more} {late && <span class="tag act">overdue</span>}
              </span>
              <span class="todo-act no-print">
                <a class="button" href={hash} aria-label={`Pay: ${what}`}>
                  Pay
                </a>
              </span>
            </li>
          ))}
        </ul>
      )}
      {due.later.bills > 0 && (
        <p class="quiet small">
          {countWords(due.later.bills, 'bill', 'bills')} due later, {formatMoney(due.later.cents)}:{' '}
          <a href="#/books/payables">Payables</a>
        </p>
      )}
    </section>
  );
}
