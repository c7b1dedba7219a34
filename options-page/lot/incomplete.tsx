import type { LotFacts } from '../../src/domain/lot/lot.ts';
import { withoutRow } from '../../src/domain/lot/unread-cell.ts';
import type { DealProblem } from '../../src/domain/worksheet/deal-of.ts';
import type { LotEdit } from './use-lot-edit.ts';

const SETUP_PART: Partial<Record<DealProblem['reason'], string>> = {
  'unknown-venue': '#/setup/venues',
  'unknown-fees': '#/setup/venues',
  'no-edition': '#/setup/fees',
  'unknown-title': '#/setup/titles',
};

interface IncompleteProps {
  readonly facts: LotFacts;
  readonly problems: readonly DealProblem[];
  readonly edit: LotEdit;
}

/** What is still missing before there can be a max bid, all of it at once. */
export function Incomplete({ facts, problems, edit }: IncompleteProps) {
  return (
    <section class="stack">
      <h2>
        {problems.some(({ short }) => short !== undefined) ? 'The max bid can’t be worked out' : 'No max bid yet'}
      </h2>
      <ul class="plain-list">
        {problems.map((problem) => (
          <li key={problem.message}>
            {problem.message}
            {problem.field !== undefined && <Settle field={problem.field} facts={facts} edit={edit} />}
            {SETUP_PART[problem.reason] !== undefined && (
              <>
                {' '}
                <a href={SETUP_PART[problem.reason]}>Go there</a>
              </>
            )}
          </li>
        ))}
      </ul>
      <p class="quiet">
        Fill in what is missing on this page, and the number appears at once. Reminders for this lot come either way.
      </p>
    </section>
  );
}

interface SettleProps {
  readonly field: NonNullable<DealProblem['field']>;
  readonly facts: LotFacts;
  readonly edit: LotEdit;
}

/** Settles what could not be read by what is known without it, because the buyer says so. */
function Settle({ field, facts, edit }: SettleProps) {
  if (field === 'row') {
    const { unread } = facts;
    return (
      <>
        {' '}
        <button type="button" class="plain" onClick={() => edit.commit('unread', withoutRow(unread), 'Saved.')}>
          The figures are right
        </button>
      </>
    );
  }
  const known = facts[field];
  // Retail has nothing to fall back on.
  if (known === undefined && field === 'retail') return null;
  const words = known === undefined ? 'Use Setup instead' : 'Use the part that was read';
  return (
    <>
      {' '}
      <button type="button" class="plain" onClick={() => edit.commit(field, known, 'Saved.')}>
        {words}
      </button>
    </>
  );
}
