import type { DealProblem } from '../../src/domain/bid/deal-of.ts';

const SETUP_PART: Partial<Record<DealProblem['reason'], string>> = {
  'unknown-venue': '#/setup/venues',
  'unknown-fees': '#/setup/venues',
  'no-edition': '#/setup/fees',
  'unknown-title': '#/setup/titles',
};

/** What is still missing before there can be a max bid, all of it at once. */
export function Incomplete({ problems }: { problems: readonly DealProblem[] }) {
  return (
    <section class="stack">
      <h2>No max bid yet</h2>
      <ul class="plain-list">
        {problems.map((problem) => (
          <li key={problem.reason}>
            {problem.message}
            {SETUP_PART[problem.reason] !== undefined && (
              <>
                {' '}
                <a href={SETUP_PART[problem.reason]}>Go there</a>
              </>
            )}
          </li>
        ))}
      </ul>
      <p class="quiet">Say what is missing beside this, and the figure appears at once.</p>
    </section>
  );
}
