import type { LotField } from '../../domain/lot/lot.ts';
import type { Setup } from '../../domain/setup/setup.ts';
import type { FactChange } from '../../folds/fact-changes.ts';
import { FACT_WORDS, factInWords } from './fact-words.ts';

interface ChangeListProps {
  readonly changes: readonly FactChange[];
  readonly setup: Setup;
  readonly ticked: ReadonlySet<LotField>;
  readonly onTick: (field: LotField, on: boolean) => void;
}

/** What the page says otherwise than is kept, each to be taken or left. */
export function ChangeList({ changes, setup, ticked, onTick }: ChangeListProps) {
  return (
    <ul class="change-list">
      {changes.map(({ field, before, after }) => (
        <li key={field}>
          <label class="row">
            <input
              type="checkbox"
              checked={ticked.has(field)}
              onChange={(event) => onTick(field, event.currentTarget.checked)}
            />
            <span>
              <span class="quiet small">{FACT_WORDS[field] ?? field}</span>{' '}
              {before !== undefined && (
                <>
                  <span class="quiet">{factInWords(field, before, setup)}</span> <span aria-hidden="true">→</span>
                  <span class="visually-hidden">becomes</span>{' '}
                </>
              )}
              <span class="strong">{factInWords(field, after, setup)}</span>
            </span>
          </label>
        </li>
      ))}
    </ul>
  );
}
