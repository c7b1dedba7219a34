import { dueBy } from '../../src/domain/after-sale/due.ts';
import { stepRule } from '../../src/domain/after-sale/venue-place.ts';
import { eventsOf } from '../../src/domain/after-sale/win.ts';
import type { NotedStepName } from '../../src/domain/after-sale/win-step.ts';
import { lotTitle } from '../../src/domain/lot/car-name.ts';
import { formatMoney } from '../../src/domain/money/format-money.ts';
import type { Instant } from '../../src/domain/time/instant.ts';
import { sayTime } from '../../src/domain/time/say-time.ts';
import { DONE_WORDS } from '../../src/journal/happenings/after-sale-words.ts';
import { DueText, WhyDue } from '../../src/ui/after-sale/due-text.tsx';
import { StepTap } from '../../src/ui/after-sale/step-tap.tsx';
import { useAfterVerbs } from '../../src/ui/hooks/use-after-verbs.ts';
import { useWorkspace } from '../../src/ui/workspace.ts';
import type { AfterLot } from '../../src/views/after-sale/after-lot.ts';

export interface WonStepProps {
  readonly step: NotedStepName;
  readonly title: string;
  readonly after: AfterLot;
  readonly now: Instant;
  readonly when: () => Instant;
}

/** One step: until when and why, the tap that does it, and each time that it was done with the way to take it back. */
export function WonStep({ step, title, after, now, when }: WonStepProps) {
  const { setup } = useWorkspace();
  const { takeBack } = useAfterVerbs();
  const { lot, sold, place, toDos } = after;
  const done = sold.steps[step] ?? [];
  const open = toDos.find(({ key }) => key === step);
  const due = open?.due ?? dueBy(step === 'refund' ? undefined : stepRule(place, step), eventsOf(sold), place);
  return (
    <li class="won-step">
      <span class="strong">{open ? title : DONE_WORDS[step]}</span>
      {open ? <DueText due={due} now={now} place={place} /> : <span class="tag">done</span>}
      <span class="small">
        {done.map((each) => (
          <span key={`${each.entry} ${each.at} ${each.cents}`} class="row">
            <span>
              {DONE_WORDS[step]}
              {each.cents !== undefined && ` ${formatMoney(each.cents)}`}, {sayTime(each.at, setup.store.zone)},{' '}
              {each.author}
            </span>
            {each.inBooks ? (
              <a class="no-print" href={`#/books/${lot.id}`}>
                Recorded in its folder
              </a>
            ) : (
              <button
                type="button"
                class="plain no-print"
                aria-label={`Undo: ${DONE_WORDS[step]}, ${lotTitle(lot.facts)}`}
                onClick={() => takeBack(each.entry)}
              >
                Undo
              </button>
            )}
          </span>
        ))}
        {open && (
          <span class="quiet">
            <WhyDue due={due} />
          </span>
        )}
      </span>
      <span class="no-print">{open && <StepTap lot={lot} toDo={open} at={when} />}</span>
    </li>
  );
}
