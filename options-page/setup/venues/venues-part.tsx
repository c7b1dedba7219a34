import { useState } from 'preact/hooks';
import type { Venue } from '../../../src/domain/setup/venue.ts';
import { useFocusNext } from '../../../src/ui/hooks/use-focus-next.ts';
import { insertAt, removeAt, replaceAt } from '../../../src/ui/tables/list-edit.ts';
import { useWorkspace } from '../../../src/ui/workspace.ts';
import { PartFrame } from '../part-frame.tsx';
import { useSetupEdit } from '../setup-edit.ts';
import type { SetupPart } from '../setup-parts.ts';
import { newVenue } from './new-venue.ts';
import { NoVenues } from './no-venues.tsx';
import { VenueEntry } from './venue-entry.tsx';

/** The places that sell: where their clock is, what they charge, in what steps they sell, how a car gets home. */
export function VenuesPart({ part }: { part: SetupPart }) {
  const { lots } = useWorkspace();
  const { setup, change } = useSetupEdit();
  const { venues } = setup;
  const [added, setAdded] = useState<string>();
  const [root, focusNext] = useFocusNext<HTMLDivElement>();

  const add = (venue: Venue, said: string) => {
    setAdded(venue.id);
    focusNext(`${venue.id}-name`);
    change({ venues: insertAt(venues, venues.length, venue) }, said);
  };
  const remove = (index: number, venue: Venue) => {
    const used = lots.filter((lot) => lot.facts.venueId === venue.id).length;
    const lotsSay = used === 0 ? '' : ` ${used === 1 ? '1 lot has' : `${used} lots have`} it and will need another.`;
    focusNext(venues[index + 1]?.id ?? venues[index - 1]?.id ?? 'add');
    change({ venues: removeAt(venues, index) }, `Removed the venue ${venue.name}.${lotsSay}`);
  };

  return (
    <PartFrame
      part={part}
      intro="A venue is one place that sells: a sale site, or one of its yards if its time zone, fees or transport differ."
    >
      <div class="stack" ref={root}>
        {venues.length === 0 ? (
          <NoVenues onAdd={() => add(newVenue(setup.store.zone), 'Added a venue.')} />
        ) : (
          <>
            {venues.map((venue, index) => (
              <VenueEntry
                key={venue.id}
                venue={venue}
                path={['venues', index]}
                openAtFirst={venues.length === 1 || venue.id === added}
                onChange={(next, said) => change({ venues: replaceAt(venues, index, next) }, said)}
                onRemove={() => remove(index, venue)}
              />
            ))}
            <p data-focus="add">
              <button type="button" onClick={() => add(newVenue(setup.store.zone), 'Added a venue.')}>
                Add a venue
              </button>
            </p>
          </>
        )}
      </div>
    </PartFrame>
  );
}
