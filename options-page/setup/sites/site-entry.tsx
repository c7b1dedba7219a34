import { useState } from 'preact/hooks';
import { giveSiteBack, requestSite } from '../../../src/browser/site-permission.ts';
import { fieldWords } from '../../../src/domain/setup/field-words.ts';
import type { Site } from '../../../src/domain/setup/site.ts';
import type { Venue } from '../../../src/domain/setup/venue.ts';
import { ChoiceInput } from '../../../src/ui/inputs/choice-input.tsx';
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
    onChange({ ...site, places }, `Forgot a place on ${site.site}.`);
  };
  const allow = async (on: boolean) => {
    const done = on ? await requestSite(site.site) : await giveSiteBack(site.site);
    if (done)
      return setSaid(
        on ? 'Its pages are read when you open them.' : 'Its pages are read only when you press the button.',
      );
    setSaid(
      on
        ? 'The browser was not given leave; nothing has changed.'
        : 'The browser keeps this one: it came with the installation.',
    );
  };
  return (
    <section class="panel stack" aria-label={site.site}>
      <h2>{site.site}</h2>
      <div class="fields">
        <ChoiceInput
          label="Whose site it is"
          value={site.venueId}
          none="Not said"
          choices={venues.map(({ id, name }) => ({ value: id, label: name }))}
          hint="Its lots get this venue, and times without a zone are read on its clock"
          onCommit={(venueId) =>
            onChange(venueId === undefined ? withoutVenue : { ...site, venueId }, `Changed the venue of ${site.site}.`)
          }
        />
      </div>
      <div class="row">
        <button type="button" aria-pressed={allowed} onClick={() => void allow(!allowed)}>
          {allowed ? 'Read when opened: allowed' : 'Allow reading its pages when I open them'}
        </button>
        <span role="status" class="small">
          {said}
        </span>
      </div>
      {site.places.length > 0 && (
        <ScrollX label={`Places pointed at on ${site.site}`}>
          <table class="ledger">
            <caption class="visually-hidden">Places pointed at on {site.site}</caption>
            <thead>
              <tr>
                <th scope="col">Field</th>
                <th scope="col">Is beside</th>
                <th scope="col">Said then</th>
                <th scope="col">
                  <span class="visually-hidden">Forget</span>
                </th>
              </tr>
            </thead>
            <tbody>
              {site.places.map((place) => (
                <tr key={place.field}>
                  <td>{fieldWords(place.field)}</td>
                  <td>“{place.label}”</td>
                  <td>{place.sample}</td>
                  <td>
                    <button
                      type="button"
                      class="plain"
                      aria-label={`Forget where ${fieldWords(place.field)} is`}
                      onClick={() => forget(place.field)}
                    >
                      Forget
                    </button>
                  </td>
                </tr>
              ))}
            </tbody>
          </table>
        </ScrollX>
      )}
    </section>
  );
}
