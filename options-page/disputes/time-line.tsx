import type { ComponentChildren } from 'preact';
import type { Instant } from '../../src/domain/time/instant.ts';
import { sayTime } from '../../src/domain/time/say-time.ts';
import { sayOutcome, sayStep } from '../../src/journal/happenings/after-sale-words.ts';
import type { EntryId } from '../../src/journal/ids.ts';
import { useAfterVerbs } from '../../src/ui/hooks/use-after-verbs.ts';
import { useWorkspace } from '../../src/ui/workspace.ts';
import type { ShownDispute } from '../../src/views/after-sale/shown-dispute.ts';
import { KeptFiles } from './kept-files.tsx';

/** All that was said and done, in the order in which it happened, each with who wrote it down and its undo. */
export function TimeLine({ shown }: { shown: ShownDispute }) {
  const { lot, dispute } = shown;
  const sale = lot.sale?.result;
  const steps = dispute.steps.toSorted((a, b) => a.at - b.at || (a.entry < b.entry ? -1 : 1));
  return (
    <section class="stack">
      <h2>Record</h2>
      <ol class="dispute-time">
        {sale && (
          <Line at={sale.at} author={sale.author}>
            The sale closed
          </Line>
        )}
        <Line at={dispute.at} author={dispute.author} takeBack={dispute.steps.length === 0 ? dispute.entry : undefined}>
          Dispute opened
        </Line>
        {steps.map((step) => (
          <Line key={step.entry} at={step.at} author={step.author} takeBack={step.entry}>
            {sayStep(step)}
            {step.files && <KeptFiles lot={lot} hashes={step.files} />}
          </Line>
        ))}
        {dispute.outcome && (
          <Line at={dispute.outcome.at} author={dispute.outcome.author}>
            <span class="strong">{sayOutcome(dispute.outcome)}</span>
          </Line>
        )}
      </ol>
    </section>
  );
}

interface LineProps {
  readonly at: Instant;
  readonly author: string;
  readonly takeBack?: EntryId | undefined;
  readonly children: ComponentChildren;
}

function Line({ at, author, takeBack, children }: LineProps) {
  const { setup } = useWorkspace();
  const verbs = useAfterVerbs();
  const when = sayTime(at, setup.store.zone);
  return (
    <li>
      <span class="quiet small">{when}</span>
      <span>{children}</span>
      <span class="row">
        <span class="quiet small">{author}</span>
        {takeBack && (
          <button
            type="button"
            class="plain no-print"
            aria-label={`Undo the entry of ${when}`}
            onClick={() => verbs.takeBack(takeBack)}
          >
            Undo
          </button>
        )}
      </span>
    </li>
  );
}
