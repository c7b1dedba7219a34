import type { ComponentChildren } from 'preact';
import type { LotFacts } from '../../src/domain/lot/lot.ts';
import { withoutRow } from '../../src/domain/lot/unread-cell.ts';
import type { Setup } from '../../src/domain/setup/setup.ts';
import type { DealProblem } from '../../src/domain/worksheet/deal-of.ts';
import type { PricingContext } from '../../src/domain/worksheet/pricing-context.ts';
import { useWorkspace } from '../../src/ui/workspace.ts';
import { FeesFill } from '../holes/fees-fill.tsx';
import type { FillProps } from '../holes/fill.ts';
import { TitleFill } from '../holes/title-fill.tsx';
import { TransportFill } from '../holes/transport-fill.tsx';
import type { LotEdit } from './use-lot-edit.ts';

const SETUP_PART: Partial<Record<DealProblem['reason'], string>> = {
  'unknown-venue': '#/setup/venues',
  'unknown-fees': '#/setup/venues',
  'no-edition': '#/setup/fees',
  'unknown-title': '#/setup/titles',
};

interface IncompleteProps {
  readonly facts: LotFacts;
  readonly context: PricingContext;
  readonly problems: readonly DealProblem[];
  readonly edit: LotEdit;
}

/** What is still missing before there can be a max bid, all of it at once, each with its answer beside it. */
export function Incomplete({ facts, context, problems, edit }: IncompleteProps) {
  return (
    <section class="stack loose incomplete" aria-label="What is missing">
      <h2>
        {problems.some(({ short }) => short !== undefined) ? 'The max bid can’t be worked out' : 'No max bid yet'}
      </h2>
      <ul class="plain-list">
        {problems.map((problem) => (
          <li key={problem.message}>
            {problem.message}
            <Fill problem={problem} facts={facts} context={context} />
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
        Fill in what is missing, and the number appears at once. Reminders for this lot come either way.
      </p>
    </section>
  );
}

interface FillAtProps {
  readonly problem: DealProblem;
  readonly facts: LotFacts;
  readonly context: PricingContext;
}

/** The question that answers a problem on the spot, where one does. */
function Fill({ problem: { reason }, facts, context }: FillAtProps) {
  const venue = context.venueOf(facts);
  const title = facts.titleId === undefined ? undefined : context.titleById.get(facts.titleId);
  const filled = (of: FillProps) => {
    if (reason === 'no-fees' && venue) return <FeesFill venue={venue} {...of} />;
    if (reason === 'no-transport' && venue) return <TransportFill venue={venue} {...of} />;
    return title && <TitleFill title={title} {...of} />;
  };
  return FILLED.has(reason) ? <Filling setup={context.setup}>{filled}</Filling> : null;
}

const FILLED: ReadonlySet<DealProblem['reason']> = new Set(['no-fees', 'no-transport', 'unconfirmed-title']);

interface FillingProps {
  readonly setup: Setup;
  readonly children: (of: FillProps) => ComponentChildren;
}

function Filling({ setup, children }: FillingProps) {
  const { saveSetup, say } = useWorkspace();
  const onFill: FillProps['onFill'] = async (set, said) => {
    const kept = await saveSetup(set);
    if (kept.ok) say(said, kept.value.entry);
    else say(kept.message);
  };
  return <div class="panel">{children({ setup, onFill })}</div>;
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
