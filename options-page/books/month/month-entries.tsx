import { monthInWords } from '../../../src/domain/books/month.ts';
import type { Transaction } from '../../../src/domain/books/post/transaction.ts';
import { formatMoney } from '../../../src/domain/money/format-money.ts';
import { ScrollX } from '../../../src/ui/tables/scroll-x.tsx';
import { countWords } from '../../../src/views/words/count-words.ts';
import { dateInWords } from '../../../src/views/words/date-words.ts';
import { useBooks } from '../use-books.ts';

/** Every entry of a month, corrections first, each with a way back to its folder. */
export function MonthEntries({ transactions }: { transactions: readonly Transaction[] }) {
  const { bookkeeping } = useBooks();
  if (transactions.length === 0) return null;
  const { accounts } = bookkeeping;
  const sorted = [...transactions].sort((a, b) => Number(b.corrects !== undefined) - Number(a.corrects !== undefined));
  return (
    <details class="stack" open={transactions.length <= 40}>
      <summary>
        <strong>{countWords(transactions.length, 'entry', 'entries')}</strong>
      </summary>
      <ScrollX label="Entries of the month">
        <table class="ledger">
          <thead>
            <tr>
              <th scope="col">Date</th>
              <th scope="col">Description</th>
              <th scope="col">Debit</th>
              <th scope="col">Credit</th>
              <th scope="col" class="number">
                Amount
              </th>
            </tr>
          </thead>
          <tbody>
            {sorted.map(({ key, lot, date, text, postings, corrects }) => {
              const to = postings.filter(({ cents }) => cents > 0);
              const from = postings.filter(({ cents }) => cents < 0);
              return (
                <tr key={`${key}/${date}`}>
                  <td class="day">{dateInWords(date)}</td>
                  <td>
                    <a href={`#/books/${lot}`}>{text}</a>
                    {corrects !== undefined && (
                      <span class="small block">
                        <a href={`#/books/month/${corrects}`}>corrects {monthInWords(corrects)}</a>
                      </span>
                    )}
                  </td>
                  <td class="small">{to.map(({ account }) => accounts[account]).join(', ')}</td>
                  <td class="small">{from.map(({ account }) => accounts[account]).join(', ')}</td>
                  <td class="number">{to.map(({ cents }) => formatMoney(cents, { cents: 'always' })).join(', ')}</td>
                </tr>
              );
            })}
          </tbody>
        </table>
      </ScrollX>
    </details>
  );
}
