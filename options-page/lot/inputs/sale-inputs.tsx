import type { LotState } from '../../../src/folds/lot-state.ts';
import { ChoiceInput } from '../../../src/ui/inputs/choice-input.tsx';
import { MoneyInput } from '../../../src/ui/inputs/money-input.tsx';
import { TextInput } from '../../../src/ui/inputs/text-input.tsx';
import { useWorkspace } from '../../../src/ui/workspace.ts';
import type { LotEdit } from '../use-lot-edit.ts';
import { CloseInput } from './close-input.tsx';
import { SealedInput } from './sealed-input.tsx';

/** Where and when it is sold, and what stands now. */
export function SaleInputs({ lot, edit }: { lot: LotState; edit: LotEdit }) {
  const { setup } = useWorkspace();
  const { facts } = lot;
  const venue = setup.venues.find(({ id }) => id === facts.venueId);
  return (
    <fieldset class="stack">
      <legend>The sale</legend>
      <div class="fields">
        <ChoiceInput
          label="Venue"
          value={facts.venueId}
          none={facts.venueName ? `${facts.venueName} (not in the setup)` : 'Not said'}
          choices={setup.venues.map(({ id, name }) => ({ value: id, label: name }))}
          hint={
            setup.venues.length === 0 ? (
              <a href="#/setup/venues">Add the venue and its fees first</a>
            ) : (
              venue && `Fees, steps and zone (${venue.zone}) come from it.`
            )
          }
          wide
          onCommit={(id) => {
            const chosen = setup.venues.find((candidate) => candidate.id === id);
            if (chosen === undefined) edit.commitAll({}, ['venueId'], 'The venue is taken out.');
            else edit.commitAll({ venueId: chosen.id, venueName: chosen.name }, [], `The venue is ${chosen.name}.`);
          }}
        />
        <CloseInput lot={lot} edit={edit} venueZone={venue?.zone} />
        <SealedInput sealed={facts.sealed} edit={edit} />
        <MoneyInput
          label="Price now"
          value={facts.priceNow}
          onCommit={(price) => edit.commit('priceNow', price, 'The price now is kept.')}
        />
        <MoneyInput
          label="Step"
          value={facts.increment}
          hint={facts.increment === undefined ? 'The venue’s own' : 'This lot’s own'}
          onCommit={(step) => edit.commit('increment', step === 0 ? undefined : step, 'The step is kept.')}
        />
        <TextInput
          label="Lot or run"
          value={facts.lotNumber}
          onCommit={(text) => edit.commit('lotNumber', text, 'The lot number is kept.')}
        />
        <TextInput
          label="Sale"
          value={facts.sale}
          onCommit={(text) => edit.commit('sale', text, 'The sale is kept.')}
        />
        <TextInput
          label="Seller"
          value={facts.seller}
          onCommit={(text) => edit.commit('seller', text, 'The seller is kept.')}
        />
        <TextInput
          label="Where it stands"
          value={facts.location}
          onCommit={(text) => edit.commit('location', text, 'The place is kept.')}
        />
      </div>
    </fieldset>
  );
}
