import { useState } from 'preact/hooks';
import { ZERO } from '../../../src/domain/money/cents.ts';
import type { ReconLine } from '../../../src/domain/money/estimate.ts';
import { PPM, ppm } from '../../../src/domain/money/rate.ts';
import { RateInput } from '../../../src/ui/inputs/rate-input.tsx';
import { TextInput } from '../../../src/ui/inputs/text-input.tsx';
import { EstimateInputs } from './estimate-inputs.tsx';

interface ReconInputsProps {
  readonly lines: readonly ReconLine[];
  /** What is taken while there are no lines. */
  readonly standing: string;
  readonly onCommit: (lines: ReconLine[] | undefined) => void;
}

/** What it takes to make the car ready for sale, line by line, each with its spread and its chance of being needed. */
export function ReconInputs({ lines, standing, onCommit }: ReconInputsProps) {
  const [adding, setAdding] = useState<string>();
  const replace = (index: number, line: ReconLine) => onCommit(lines.map((old, i) => (i === index ? line : old)));
  const remove = (index: number) => {
    const rest = lines.filter((_, i) => i !== index);
    onCommit(rest.length === 0 ? undefined : rest);
  };
  return (
    <div class="stack">
      {lines.length === 0 && <p class="quiet small">No lines yet: {standing}</p>}
      {lines.map((line, index) => (
        <fieldset key={`${index}-${line.label}`} class="recon-line">
          <legend class="visually-hidden">Recon: {line.label}</legend>
          <TextInput
            label="What"
            value={line.label}
            longest={80}
            required
            onCommit={(label) => label !== undefined && replace(index, { ...line, label })}
          />
          <EstimateInputs
            narrow
            value={line.amount}
            onCommit={(amount) => replace(index, { ...line, amount: amount ?? { likely: ZERO } })}
          />
          <div class="recon-foot">
            <RateInput
              label="Chance it is needed"
              value={line.chance}
              required
              onCommit={(chance) => chance !== undefined && replace(index, { ...line, chance })}
            />
            <button type="button" class="plain" onClick={() => remove(index)} aria-label={`Remove ${line.label}`}>
              Remove
            </button>
          </div>
        </fieldset>
      ))}
      {adding === undefined ? (
        <button type="button" onClick={() => setAdding('')}>
          Add a recon line
        </button>
      ) : (
        <TextInput
          label="What needs doing?"
          value={undefined}
          longest={80}
          placeholder="Tires"
          onCommit={(label) => {
            setAdding(undefined);
            if (label !== undefined) onCommit([...lines, { label, amount: { likely: ZERO }, chance: ppm(PPM) }]);
          }}
        />
      )}
    </div>
  );
}
