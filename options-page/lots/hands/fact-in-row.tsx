import { ChoiceInput } from '../../../src/ui/inputs/choice-input.tsx';
import { MoneyInput } from '../../../src/ui/inputs/money-input.tsx';
import { useWorkspace } from '../../../src/ui/workspace.ts';
import { useLotEdit } from '../../lot/use-lot-edit.ts';
import type { RowPanelProps } from './row-panel.tsx';

/** The venue, which brings the fees. */
export function VenueInRow({ lot, name, onClose }: RowPanelProps) {
  const { venues } = useWorkspace().setup;
  const edit = useLotEdit(lot);
  if (venues.length === 0) return <a href="#/setup/venues">Add the venue and its fees first</a>;
  return (
    <ChoiceInput
      label="Venue"
      value={lot.facts.venueId}
      none={lot.facts.venueName ? `${lot.facts.venueName} (not in the setup)` : 'Not set'}
      choices={venues.map(({ id, name: label }) => ({ value: id, label }))}
      onCommit={(id) => {
        const venue = venues.find((one) => one.id === id);
        if (venue === undefined) return;
        edit.commitAll({ venueId: venue.id, venueName: venue.name }, [], `${name}: venue set to ${venue.name}.`);
        onClose();
      }}
    />
  );
}

/** What the car will bring at retail: the likely figure, from which a first max bid follows. */
export function RetailInRow({ lot, name, onClose }: RowPanelProps) {
  const edit = useLotEdit(lot);
  return (
    <MoneyInput
      label="Retail estimate, likely"
      value={lot.facts.retail?.likely}
      onCommit={(likely) => {
        if (likely === undefined) return;
        edit.commit('retail', { ...lot.facts.retail, likely }, `${name}: retail estimate saved.`);
        onClose('saved');
      }}
    />
  );
}
