import { useMemo } from 'preact/hooks';
import { bankView } from '../../../src/views/books/bank-of.ts';
import { useBooks } from '../use-books.ts';
import { BankOpen } from './bank-open.tsx';
import { BankProposed } from './bank-proposed.tsx';
import { BankSettled } from './bank-settled.tsx';
import { ReadStatement } from './read-statement.tsx';

/** The bank beside the books: a statement in, what belongs together, and what either has alone. */
export function BankPart() {
  const { state, folders } = useBooks();
  const view = useMemo(() => bankView(state.bank, folders), [state, folders]);
  const isEmpty = state.bank.statements.length === 0;
  return (
    <>
      <header class="stack">
        <h1>Bank</h1>
        <p class="prose">
          A bank statement as CSV or OFX, compared with what is recorded: payments, refunds, bills paid at once, payoffs
          and sales. Nothing is matched until you say so, and nothing leaves this computer.
        </p>
      </header>
      <ReadStatement key={state.bank.statements.length} first={isEmpty} />
      {isEmpty ? (
        <p>No statement has been read yet. Download one from your bank’s site and choose it above.</p>
      ) : (
        <>
          <BankProposed key={view.matched.length} proposed={view.proposed} carsOf={view.carsOf} />
          <BankOpen view={view} />
          <BankSettled view={view} />
        </>
      )}
    </>
  );
}
