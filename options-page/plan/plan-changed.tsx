import { lotName } from '../../src/domain/lot/car-name.ts';
import { sayTime } from '../../src/domain/time/say-time.ts';
import { useWorkspace } from '../../src/ui/workspace.ts';
import type { KeptPlan } from '../../src/views/plan/kept-plan.ts';
import { countWords } from '../../src/views/words/count-words.ts';

/** As many as one reads through; the others when asked for. */
const FEW = 4;

/** When the plan was made, and what the last one that differed says otherwise. */
export function PlanChanged({ kept, holds }: { kept: KeptPlan; holds: boolean }) {
  const { setup, lots } = useWorkspace();
  const { zone } = setup.store;
  const { changed } = kept;
  const names = new Map<string, string>(lots.map(({ id, facts }) => [id, lotName(facts)]));
  const items = (changed?.changes ?? []).map(({ lotId, sentence }) => (
    <li key={lotId}>
      <a href={`#/lot/${lotId}`}>{names.get(lotId) ?? 'A lot removed from your list'}</a>: {sentence}
    </li>
  ));
  return (
    <section class="stack" aria-label="What changed">
      <p role="status">
        {holds
          ? `Made ${sayTime(kept.madeAt, zone)} on this computer, from what it knows.`
          : `Something has changed since ${sayTime(kept.madeAt, zone)}. The plan is being made anew…`}
      </p>
      {changed !== null && (
        <div class="note plan-changed">
          <p>
            <span class="strong">
              {countWords(items.length, 'planned bid', 'planned bids')} changed {sayTime(changed.at, zone)}.
            </span>{' '}
            {changed.because.join(' ')}
          </p>
          <ul>{items.slice(0, FEW)}</ul>
          {items.length > FEW && (
            <details>
              <summary>{items.length - FEW} more</summary>
              <ul>{items.slice(FEW)}</ul>
            </details>
          )}
        </div>
      )}
    </section>
  );
}
