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
          none={facts.venueName ? `${facts.venueName} (not in the setup)` : 'Not set'}
          choices={setup.venues.map(({ id, name }) => ({ value: id, label: name }))}
          hint={
            setup.venues.length === 0 ? (
              <a href="#/setup/venues">Add the venue and its fees first</a>
            ) : (
              venue && `Fees, increments and time zone (${venue.zone}) come from it.`
            )
          }
          wide
          onCommit={(id) => {
            const chosen = setup.venues.find((candidate) => candidate.id === id);
            if (chosen === undefined) edit.commitAll({}, ['venueId'], 'Venue cleared.');
            else edit.commitAll({ venueId: chosen.id, venueName: chosen.name }, [], `Venue set to ${chosen.name}.`);
          }}
        />
        <CloseInput lot={lot} venueZone={venue?.zone} />
        <SealedInput sealed={facts.sealed} edit={edit} />
        <MoneyInput
          label="Price now"
          value={facts.priceNow}
          onCommit={(price) => edit.commit('priceNow', price, 'Price now saved.')}
        />
        <MoneyInput
          label="Increment"
          value={facts.increment}
          hint={facts.increment === undefined ? 'The venue’s own' : 'This lot’s own'}
          onCommit={(step) => edit.commit('increment', step === 0 ? undefined : step, 'Increment saved.')}
        />
        <TextInput
          label="Lot or run"
          value={facts.lotNumber}
          onCommit={(text) => edit.commit('lotNumber', text, 'Lot number saved.')}
        />
        <TextInput label="Sale" value={facts.sale} onCommit={(text) => edit.commit('sale', text, 'Sale saved.')} />
        <TextInput
          label="Seller"
          value={facts.seller}
          onCommit={(text) => edit.commit('seller', text, 'Seller saved.')}
        />
        <TextInput
          label="Location"
          value={facts.location}
          onCommit={(text) => edit.commit('location', text, 'Location saved.')}
        />
      </div>
    </fieldset>
  );
}
