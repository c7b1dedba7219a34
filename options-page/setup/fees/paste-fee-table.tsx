import { useId, useMemo, useState } from 'preact/hooks';
import type { FeeBand } from '../../../src/domain/fees/fee-schedule.ts';
import { readFeeTable } from '../../../src/domain/fees/read-fee-table.ts';
import { PastedBands } from '../../holes/pasted-bands.tsx';

export interface PasteFeeTableProps {
  readonly text: string;
  readonly label: string;
  readonly onUse: (bands: FeeBand[]) => void;
  readonly onLeave: () => void;
}

const EXAMPLE = '0 – 499.99   $100\n500 – 999.99   $125\n$1,000 and up   2.5% (min $150)';

/** Pasted fee bands, how they were read, and what could not be read. Nothing is used before the user says so. */
export function PasteFeeTable({ text: pasted, label, onUse, onLeave }: PasteFeeTableProps) {
  const [text, setText] = useState(pasted);
  const id = useId();
  const reading = useMemo(() => readFeeTable(text), [text]);
  const usable = reading.bands.length > 0 && reading.faults.length === 0;
  const empty = text.trim() === '';
  return (
    <div class="stack paste">
      <div class="field">
        <label class="label" for={id}>
          Fee bands for {label}, as copied
        </label>
        <textarea
          id={id}
          rows={Math.min(14, Math.max(5, text.split('\n').length + 1))}
          value={text}
          placeholder={EXAMPLE}
          spellcheck={false}
          aria-describedby={`${id}-hint`}
          onInput={(event) => setText(event.currentTarget.value)}
        />
        <span class="quiet small" id={`${id}-hint`}>
          One band per line. The first line can name the columns: from, to, fee, percent, minimum, maximum.
        </span>
      </div>
      <div aria-live="polite" class="stack">
        {!empty && reading.faults.length === 0 && reading.bands.length === 0 && (
          <p class="fault">No line has a price and a fee. Copy the rows of the fee table itself.</p>
        )}
        {reading.faults.length > 0 && (
          <ul class="note warning plain-list">
            {reading.faults.map((fault) => (
              <li key={`${fault.line}-${fault.message}`}>
                <strong>Line {fault.line}:</strong> {fault.message}
              </li>
            ))}
          </ul>
        )}
        {reading.bands.length > 0 && <PastedBands bands={reading.bands} complete={usable} />}
        {reading.leftOut.length > 0 && (
          <p class="quiet small">
            Left out because it has no figure:{' '}
            {reading.leftOut.map(({ line, text: content }) => `line ${line}, “${content.slice(0, 60)}”`).join('; ')}.
          </p>
        )}
      </div>
      <p class="row">
        <button
          type="button"
          class="main"
          disabled={!usable}
          onClick={() => onUse(reading.bands.map(({ band }) => band))}
        >
          {usable ? `Replace the old bands with these ${reading.bands.length}` : 'Use these bands'}
        </button>
        <button type="button" onClick={onLeave}>
          Cancel
        </button>
      </p>
    </div>
  );
}
