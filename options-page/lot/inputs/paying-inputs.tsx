import type { LotState } from '../../../src/folds/lot-state.ts';
import { ChoiceInput } from '../../../src/ui/inputs/choice-input.tsx';
import { MoneyInput } from '../../../src/ui/inputs/money-input.tsx';
import { useWorkspace } from '../../../src/ui/workspace.ts';
import { ProxyInput } from '../sale/proxy-input.tsx';
import type { LotEdit } from '../use-lot-edit.ts';

/** How it comes home and who pays for it while it sits. */
export function PayingInputs({ lot, edit }: { lot: LotState; edit: LotEdit }) {
  const { setup } = useWorkspace();
  const { facts } = lot;
  const brand = setup.titles.find(({ id }) => id === facts.titleId);
  return (
    <fieldset class="stack">
      <legend>Title and money</legend>
      <div class="fields">
        <ChoiceInput
          label="Title"
          value={facts.titleId}
          none="Not set (assumed clean)"
          choices={setup.titles.map(({ id, name }) => ({ value: id, label: name }))}
          hint={brand?.paper}
          onCommit={(id) => edit.commit('titleId', id, 'Title saved.')}
        />
        <ChoiceInput
          label="Paid from"
          value={facts.funding}
          none={setup.carrying.floorPlan ? 'Floor plan if the title allows' : 'Own cash (no floor plan in Setup)'}
          choices={[
            { value: 'floor', label: 'Floor plan' },
            { value: 'cash', label: 'Own cash' },
          ]}
          {...(brand && !brand.floorable ? { hint: 'This title can’t go on the floor plan. It takes cash.' } : {})}
          onCommit={(kind) => edit.commit('funding', kind === 'floor' || kind === 'cash' ? kind : undefined, 'Saved.')}
        />
        <MoneyInput
          label="Transport quote"
          value={facts.transport}
          hint={facts.transport === undefined ? 'The venue’s rule until you enter one' : 'Instead of the venue’s rule'}
          onCommit={(quote) => edit.commit('transport', quote, 'Transport quote saved.')}
        />
        <ProxyInput lot={lot} />
      </div>
    </fieldset>
  );
}
