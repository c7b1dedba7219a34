import { lotName } from '../../../src/domain/lot/car-name.ts';
import type { LeftOut } from '../../../src/views/lots/do-lot-acts.ts';
import { countWords } from '../../../src/views/words/count-words.ts';

/** Which lots were left out of what was just done, and why. It stays until it is closed. */
export function LeftOutNote({ left, onClose }: { left: readonly LeftOut[]; onClose: () => void }) {
  if (left.length === 0) return null;
  return (
    <div class="note warning small" role="alert">
      <p class="strong">{countWords(left.length, 'lot was', 'lots were')} left out:</p>
      <LeftOutList left={left} />
      <button type="button" class="plain" onClick={onClose}>
        Close
      </button>
    </div>
  );
}

export function LeftOutList({ left }: { left: readonly LeftOut[] }) {
  return (
    <ul class="left-out">
      {left.map(({ lot, why }) => (
        <li key={lot.id}>
          {lotName(lot.facts)}: {why}
        </li>
      ))}
    </ul>
  );
}
