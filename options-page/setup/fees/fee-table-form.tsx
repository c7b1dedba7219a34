import { useState } from 'preact/hooks';
import type { FeeTable } from '../../../src/domain/fees/fee-schedule.ts';
import { ROUNDING, ROUNDING_MODES } from '../../../src/domain/money/rounding.ts';
import { useFocusNext } from '../../../src/ui/hooks/use-focus-next.ts';
import { ChoiceInput } from '../../../src/ui/inputs/choice-input.tsx';
import { TextInput } from '../../../src/ui/inputs/text-input.tsx';
import { FaultsAt } from '../faults-at.tsx';
import { BandsTable } from './bands-table.tsx';
import { PasteFeeTable } from './paste-fee-table.tsx';

export interface FeeTableFormProps {
  readonly table: FeeTable;
  readonly path: readonly PropertyKey[];
  readonly focusKey: string;
  readonly onChange: (table: FeeTable, said?: string) => void;
  readonly onRemove: () => void;
}

/** One fee that depends on the hammer price: its name, its bands typed or pasted, how it is rounded. */
export function FeeTableForm({ table, path, focusKey, onChange, onRemove }: FeeTableFormProps) {
  const [pasting, setPasting] = useState<{ readonly text: string }>();
  const [root, focusNext] = useFocusNext<HTMLFieldSetElement>();
  const label = table.label || 'New fee';
  const hasRate = table.bands.some((band) => band.ratePpm > 0);
  return (
    <fieldset class="stack fee-table" ref={root} data-focus={focusKey}>
      <legend>{label}</legend>
      <div class="fields">
        <TextInput
          label="Name on the invoice"
          value={table.label === '' ? undefined : table.label}
          longest={80}
          required
          onCommit={(next = '') => onChange({ ...table, label: next })}
        />
        {hasRate && (
          <ChoiceInput
            label="Fractions of a cent"
            value={table.rounding}
            choices={ROUNDING_MODES.map((mode) => ({ value: mode, label: ROUNDING[mode].words }))}
            onCommit={(mode) => {
              const rounding = ROUNDING_MODES.find((known) => known === mode);
              if (rounding !== undefined) onChange({ ...table, rounding });
            }}
          />
        )}
      </div>
      <FaultsAt path={[...path, 'label']} />
      {pasting === undefined ? (
        <BandsTable
          bands={table.bands}
          label={label}
          rounding={table.rounding}
          path={[...path, 'bands']}
          onChange={(bands) => onChange({ ...table, bands })}
          onPaste={(text) => {
            focusNext('paste');
            setPasting({ text });
          }}
          onRemoveTable={onRemove}
        />
      ) : (
        <div data-focus="paste">
          <PasteFeeTable
            text={pasting.text}
            label={label}
            onUse={(bands) => {
              setPasting(undefined);
              focusNext('bands');
              onChange({ ...table, bands }, `${label} now has ${bands.length} pasted bands.`);
            }}
            onLeave={() => {
              setPasting(undefined);
              focusNext('bands');
            }}
          />
        </div>
      )}
    </fieldset>
  );
}
