import { lotTitle } from '../../src/domain/lot/car-name.ts';
import { formatMoney } from '../../src/domain/money/format-money.ts';
import { type Instant, instant } from '../../src/domain/time/instant.ts';
import { DueText } from '../../src/ui/after-sale/due-text.tsx';
import { StepTap } from '../../src/ui/after-sale/step-tap.tsx';
import type { ToDoItem } from '../../src/views/after-sale/todo-groups.ts';

/** One thing to do: until when, what, about which car, and the tap that does it. */
export function ToDoRow({ item, now, late }: { item: ToDoItem; now: Instant; late: boolean }) {
  const { lot, place, sold } = item.lot;
  const { toDo } = item;
  const dispute = toDo.dispute === undefined ? undefined : lot.after?.disputes[toDo.dispute];
  const missing = toDo.needs?.length ?? 0;
  return (
    <li class={late ? 'todo-row late' : 'todo-row'}>
      <DueText due={toDo.due} now={now} place={place} />
      <span class="todo-what">
        <span class="strong">{toDo.what}</span> <a href={`#/won/${lot.id}`}>{lotTitle(sold.facts)}</a>
        <span class="quiet small">
          {' '}
          {place.name}
          {toDo.kind === 'bills' && toDo.cents !== undefined && `, ${formatMoney(toDo.cents)}`}
          {missing > 0 && `, ${missing} ${missing === 1 ? 'paper' : 'papers'} missing`}
        </span>
      </span>
      <span class="todo-act no-print">
        {dispute ? (
          <a
            class="button"
            href={`#/dispute/${dispute.entry}`}
            aria-label={`Open the dispute: ${lotTitle(sold.facts)}`}
          >
            Open the dispute
          </a>
        ) : toDo.kind === 'bills' ? (
          <a class="button" href={`#/books/${lot.id}`} aria-label={`Bills: ${lotTitle(sold.facts)}`}>
            Bills
          </a>
        ) : (
          <StepTap lot={lot} toDo={toDo} at={() => instant(Date.now())} />
        )}
      </span>
    </li>
  );
}
