import { useId, useState } from 'preact/hooks';
import type { LotAct } from '../../src/acts/act.ts';

interface HandOverProps {
  readonly handedTo: string | undefined;
  /** Who got lots before, the last one first. */
  readonly people: readonly string[];
  readonly onAct: (act: LotAct) => void;
}

const LONGEST = 80;
const OFFERED = 3;

/** Somebody else watches this lot from here on: one press for those who did before, or a name. */
export function HandOver({ handedTo, people, onAct }: HandOverProps) {
  const id = useId();
  const [name, setName] = useState('');
  if (handedTo !== undefined) {
    return (
      <button type="button" onClick={() => onAct({ do: 'take-back' })}>
        Take over from {handedTo}
      </button>
    );
  }
  return (
    <details class="now-hand">
      <summary class="now-hand-over">Hand over</summary>
      <div class="now-acts">
        {people.slice(0, OFFERED).map((person) => (
          <button key={person} type="button" onClick={() => onAct({ do: 'hand-over', to: person })}>
            To {person}
          </button>
        ))}
      </div>
      <form
        class="now-to"
        onSubmit={(event) => {
          event.preventDefault();
          if (name.trim() !== '') onAct({ do: 'hand-over', to: name.trim() });
        }}
      >
        <div class="field">
          <label class="label" for={id}>
            To whom
          </label>
          <input id={id} value={name} maxLength={LONGEST} onInput={(event) => setName(event.currentTarget.value)} />
        </div>
        <button type="submit" disabled={name.trim() === ''}>
          Hand over
        </button>
      </form>
    </details>
  );
}
