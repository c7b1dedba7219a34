import { replaceAt } from '../../../src/ui/tables/list-edit.ts';
import { PartFrame } from '../part-frame.tsx';
import { useSetupEdit } from '../setup-edit.ts';
import type { SetupPart } from '../setup-parts.ts';
import { VenueAfter } from './venue-after.tsx';
import './after.css';

/** What each venue's terms say about the time after the hammer: deadlines, and the days on which it works. */
export function AfterPart({ part }: { part: SetupPart }) {
  const { setup, change } = useSetupEdit();
  const { venues } = setup;
  return (
    <PartFrame
      part={part}
      intro="Pay by, title by, claim by: each venue counts in its own way. Copy its deadlines here once. Every won lot and every dispute then shows its dates, and you get reminders before they pass."
      caution="The terms you agreed to at that sale decide, and local law comes before them. Headroom only counts the days you enter."
    >
      {venues.length === 0 ? (
        <p>
          No venues yet. <a href="#/setup/venues">Add one</a>, then come back.
        </p>
      ) : (
        <div class="stack">
          {venues.map((venue, index) => (
            <VenueAfter
              key={venue.id}
              venue={venue}
              path={['venues', index]}
              openAtFirst={venues.length === 1}
              onChange={(next, said) => change({ venues: replaceAt(venues, index, next) }, said)}
            />
          ))}
        </div>
      )}
    </PartFrame>
  );
}
