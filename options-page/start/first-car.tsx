import type { TitleBrand } from '../../src/domain/setup/money-rules.ts';
import { ChoiceInput } from '../../src/ui/inputs/choice-input.tsx';
import { MoneyInput } from '../../src/ui/inputs/money-input.tsx';
import { TextInput } from '../../src/ui/inputs/text-input.tsx';
import type { PartProps } from './part-props.ts';

/** The first lot: the least from which a max bid follows. */
export function FirstCar({ draft, put, titles }: PartProps & { readonly titles: readonly TitleBrand[] }) {
  return (
    <fieldset class="stack">
      <legend>A car you are looking at there</legend>
      <div class="fields">
        <TextInput label="Car" value={draft.car} placeholder="Year, make, model" onCommit={(car) => put({ car })} />
        <MoneyInput
          label="Likely retail"
          value={draft.retail}
          hint="What you would sell it for"
          onCommit={(retail) => put({ retail })}
        />
        <MoneyInput
          label="Recon"
          value={draft.recon}
          hint="To make it ready for sale; 0 if nothing"
          onCommit={(recon) => put({ recon })}
        />
        <ChoiceInput
          label="Title"
          value={draft.titleId}
          choices={titles.map(({ id, name }) => ({ value: id, label: name }))}
          onCommit={(titleId = 'clean') => put({ titleId })}
        />
      </div>
    </fieldset>
  );
}
