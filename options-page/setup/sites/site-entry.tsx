import { useState } from 'preact/hooks';
import { giveSiteBack, requestSite } from '../../../src/browser/site-permission.ts';
import { fieldWords } from '../../../src/domain/setup/field-words.ts';
import type { Site } from '../../../src/domain/setup/site.ts';
import type { Venue } from '../../../src/domain/setup/venue.ts';
import { ChoiceInput } from '../../../src/ui/inputs/choice-input.tsx';
import { Ledger } from '../../../src/ui/tables/ledger.tsx';
import { ScrollX } from '../../../src/ui/tables/scroll-x.tsx';

interface SiteEntryProps {
  readonly site: Site;
  readonly venues: readonly Venue[];
  readonly allowed: boolean;
  readonly onChange: (site: Site, said: string) => void;
}

/** One sale site. */
export function SiteEntry({ site, venues, allowed, onChange }: SiteEntryProps) {
  const [said, setSaid] = useState('');
  const { venueId: _, ...withoutVenue } = site;
  const forget = (field: string) => {
    const places = site.places.filter((place) => place.field !== field);
    onChange({ ...site, places }, `Removed a place on ${site.site}.`);
  };
  const allow = async (on: boolean) => {
    const done = on ? await requestSite(site.site) : await giveSiteBack(site.site);
    if (done)
      return setSaid(on ? 'Auto-read is on.' : 'Auto-read is off: pages are read only when you press the button.');
    setSaid(
      on
        ? 'Permission was not given. Nothing has changed.'
        : 'The browser keeps this permission: it came with the installation.',
    );
  };
  return (
    <section class="panel stack" aria-label={site.site}>
      <h2>{site.site}</h2>
      <div class="fields">
        <ChoiceInput
          label="Venue"
          value={site.venueId}
          none="Not set"
          choices={venues.map(({ id, name }) => ({ value: id, label: name }))}
          hint="Its lots get this venue, and times without a zone are read in its zone"
          onCommit={(venueId) =>
            onChange(venueId === undefined ? withoutVenue : { ...site, venueId }, `Venue of ${site.site} saved.`)
          }
        />
      </div>
      <div class="row">
        <button type="button" aria-pressed={allowed} onClick={() => void allow(!allowed)}>
          {allowed ? 'Auto-read is on' : 'Turn on auto-read'}
        </button>
        <span role="status" class="small">
          {said}
        </span>
      </div>
      {site.places.length > 0 && (
        <ScrollX label={`Places pointed at on ${site.site}`}>
          <Ledger
            caption={`Places pointed at on ${site.site}`}
            captionClass="visually-hidden"
            rows={site.places}
            rowKey={({ field }) => field}
            columns={[
              { label: 'Field', cell: ({ field }) => fieldWords(field) },
              { label: 'Next to', cell: ({ label }) => `“${label}”` },
              { label: 'Value then', cell: ({ sample }) => sample },
              {
                label: 'Remove',
                quietHead: true,
                cell: ({ field }) => (
                  <button
                    type="button"
                    class="plain"
                    aria-label={`Remove the place for ${fieldWords(field)}`}
                    onClick={() => forget(field)}
                  >
                    Remove
                  </button>
                ),
              },
            ]}
          />
        </ScrollX>
      )}
    </section>
  );
}
