import type { LotState } from '../../../src/folds/lot-state.ts';
import { ChoiceInput } from '../../../src/ui/inputs/choice-input.tsx';
import { useWorkspace } from '../../../src/ui/workspace.ts';
import { useManyLots } from './use-many-lots.ts';

interface VenueForAllProps {
  readonly lots: readonly LotState[];
  readonly onDone: () => void;
}

/** One venue for all of them. */
export function VenueForAll({ lots, onDone }: VenueForAllProps) {
  const { venues } = useWorkspace().setup;
  const { set } = useManyLots();
  if (venues.length === 0) return <a href="#/setup/venues">Add the venue and its fees first</a>;
  return (
    <div class="bulk-panel">
      <ChoiceInput
        label="Venue"
        value={undefined}
        none="Choose one"
        choices={venues.map(({ id, name }) => ({ value: id, label: name }))}
        onCommit={async (id) => {
          const venue = venues.find((one) => one.id === id);
          if (venue === undefined) return;
          const facts = { venueId: venue.id, venueName: venue.name };
          if (await set(lots, () => facts, `venue set to ${venue.name}.`)) onDone();
        }}
      />
    </div>
  );
}
