import { FIRST_YEAR } from '../../../src/domain/lot/parse-year.ts';
import type { LotState } from '../../../src/folds/lot-state.ts';
import { NumberInput } from '../../../src/ui/inputs/number-input.tsx';
import { TextInput } from '../../../src/ui/inputs/text-input.tsx';
import type { LotEdit } from '../use-lot-edit.ts';
import { VinInput } from './vin-input.tsx';

/** What it is. */
export function CarInputs({ lot, edit }: { lot: LotState; edit: LotEdit }) {
  const { facts } = lot;
  return (
    <fieldset class="stack">
      <legend>The car</legend>
      <div class="fields">
        <VinInput lot={lot} edit={edit} />
        <NumberInput
          label="Year"
          value={facts.year}
          least={FIRST_YEAR}
          most={2100}
          grouped={false}
          onCommit={(year) => edit.commit('year', year, 'Year saved.')}
        />
        <TextInput label="Make" value={facts.make} onCommit={(text) => edit.commit('make', text, 'Make saved.')} />
        <TextInput label="Model" value={facts.model} onCommit={(text) => edit.commit('model', text, 'Model saved.')} />
        <TextInput label="Trim" value={facts.trim} onCommit={(text) => edit.commit('trim', text, 'Trim saved.')} />
        <NumberInput
          label="Miles"
          value={facts.miles}
          least={0}
          most={2_000_000}
          unit="mi"
          onCommit={(miles) => edit.commit('miles', miles, 'Mileage saved.')}
        />
      </div>
    </fieldset>
  );
}
