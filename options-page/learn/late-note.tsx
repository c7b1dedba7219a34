import type { PastLot } from '../../src/domain/learn/happened.ts';
import { countWords } from '../../src/views/words/count-words.ts';

/** Lots that are in no score because they were written down only after their sale, by name. */
export function LateNote({ past }: { past: readonly PastLot[] }) {
  const late = past.filter(({ forecast }) => forecast.late);
  if (late.length === 0) return null;
  return (
    <details class="learn-late">
      <summary>
        {countWords(late.length, 'lot', 'lots')} left out: added after the sale was over, so there was no forecast
      </summary>
      <ul>
        {late.map(({ lot, title }) => (
          <li key={lot}>
            <a href={`#/history/${lot}`}>{title}</a>
          </li>
        ))}
      </ul>
    </details>
  );
}
