import { useId, useMemo } from 'preact/hooks';
import type { FeeBand } from '../../src/domain/fees/fee-schedule.ts';
import { readBuyFee } from '../../src/domain/fees/read-buy-fee.ts';
import { PastedBands } from './pasted-bands.tsx';

export interface FeeBoxProps {
  /** Whose fees they are, in words. */
  readonly venue: string;
  readonly text: string;
  readonly onType: (text: string, bands: readonly FeeBand[] | undefined) => void;
}

const EXAMPLE = '250\nor 2.5%, min 150\nor the fee table, as copied';

/** What a buyer pays at a venue: one fee, or its fee table as copied; below it how it was read. */
export function FeeBox({ venue, text, onType }: FeeBoxProps) {
  const id = useId();
  const reading = useMemo(() => readBuyFee(text), [text]);
  const empty = text.trim() === '';
  return (
    <div class="field wide">
      <label class="label" for={id}>
        Buy fees at {venue}
      </label>
      <textarea
        id={id}
        rows={Math.min(12, Math.max(3, text.split('\n').length + 1))}
        value={text}
        placeholder={EXAMPLE}
        spellcheck={false}
        aria-describedby={`${id}-hint`}
        onInput={({ currentTarget: { value } }) => onType(value, bandsOf(value))}
      />
      <span class="quiet small" id={`${id}-hint`}>
        One fee for every price, or the fee table with one band per line. Type 0 if there is no buy fee.
      </span>
      <div aria-live="polite" class="stack">
        {!empty && reading.faults.length === 0 && reading.bands.length === 0 && (
          <p class="fault">No line has a price and a fee. Copy the rows of the fee table itself.</p>
        )}
        {reading.faults.map((fault) => (
          <p class="fault" key={`${fault.line}-${fault.message}`}>
            Line {fault.line}: {fault.message}
          </p>
        ))}
        {reading.bands.length > 0 && <PastedBands bands={reading.bands} complete={reading.faults.length === 0} />}
      </div>
    </div>
  );
}

/** The bands, if all of the text could be read. */
function bandsOf(text: string): readonly FeeBand[] | undefined {
  const { bands, faults } = readBuyFee(text);
  return bands.length > 0 && faults.length === 0 ? bands.map(({ band }) => band) : undefined;
}
