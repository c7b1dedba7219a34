import type { FeeEdition } from '../../../src/domain/fees/fee-schedule.ts';
import type { LocalDate } from '../../../src/domain/time/local-date.ts';
import { editionDates, editionState } from './edition-words.ts';

export interface EditionChoiceProps {
  readonly editions: readonly FeeEdition[];
  readonly chosen: number;
  readonly today: LocalDate;
  readonly onChoose: (index: number) => void;
}

/** Which of several dated rates is shown. A single one needs no choice. */
export function EditionChoice({ editions, chosen, today, onChoose }: EditionChoiceProps) {
  if (editions.length < 2) return null;
  return (
    <fieldset class="stack">
      <legend>Rates</legend>
      <div class="row">
        {editions.map((edition, index) => (
          <button key={index} type="button" aria-pressed={index === chosen} onClick={() => onChoose(index)}>
            {editionDates(edition)} <span class="small">{editionState(edition, today)}</span>
          </button>
        ))}
      </div>
    </fieldset>
  );
}
