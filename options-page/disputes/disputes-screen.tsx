import { useState } from 'preact/hooks';
import { instant } from '../../src/domain/time/instant.ts';
import { MINUTE } from '../../src/domain/time/units.ts';
import { useNow } from '../../src/ui/hooks/use-now.ts';
import { LotsApartNote } from '../../src/ui/lots-apart-note.tsx';
import { StillReading } from '../../src/ui/still-reading.tsx';
import { type DisputeFilter, filterDisputes } from '../../src/views/after-sale/shown-dispute.ts';
import { countWords } from '../../src/views/words/count-words.ts';
import { DisputeRow } from './dispute-row.tsx';
import { NoDisputes } from './no-disputes.tsx';
import { PressedChoice } from './pressed-choice.tsx';
import { useDisputes } from './use-disputes.ts';
import './disputes.css';

const SHOWS = [
  { value: 'open', label: 'Open' },
  { value: 'closed', label: 'Closed' },
  { value: 'all', label: 'All' },
] as const;
const SIDES = [
  { value: 'any', label: 'All claims' },
  { value: 'ours', label: 'Our claims' },
  { value: 'theirs', label: 'Against us' },
] as const;

/** The disputes by their deadlines, each with what is still missing. */
export function DisputesScreen() {
  const now = instant(Math.floor(useNow(15_000) / MINUTE) * MINUTE);
  const found = useDisputes();
  const [filter, setFilter] = useState<DisputeFilter>({ show: 'open', side: 'any', search: '' });
  if (found === null) return <StillReading title="Disputes" words="Reading the disputes…" />;
  const { disputes, apart } = found;
  if (disputes.length + apart.length === 0) return <NoDisputes />;
  const shown = filterDisputes(disputes, filter);
  return (
    <section class="stack">
      <header class="row apart">
        <h1>Disputes</h1>
        <div class="row no-print">
          <button type="button" onClick={() => print()}>
            Print
          </button>
          <a class="button main" href="#/open-dispute">
            Open a dispute
          </a>
        </div>
      </header>
      <LotsApartNote lots={apart} />
      <div class="row no-print">
        <PressedChoice
          legend="Show"
          choices={SHOWS}
          value={filter.show}
          onPress={(show) => setFilter({ ...filter, show })}
        />
        <PressedChoice
          legend="Whose claim"
          choices={SIDES}
          value={filter.side}
          onPress={(side) => setFilter({ ...filter, side })}
        />
        <input
          type="search"
          class="dispute-search"
          aria-label="Search the disputes"
          placeholder="Search: car, VIN, venue, words"
          value={filter.search}
          onInput={(event) => setFilter({ ...filter, search: event.currentTarget.value })}
        />
        <span class="quiet small" role="status">
          {shown.length} of {countWords(disputes.length, 'dispute', 'disputes')}
        </span>
      </div>
      {shown.length === 0 ? (
        <p>
          No dispute matches.{' '}
          <button type="button" class="plain" onClick={() => setFilter({ show: 'all', side: 'any', search: '' })}>
            Show all
          </button>
        </p>
      ) : (
        <ul class="dispute-rows">
          {shown.map((each) => (
            <DisputeRow key={each.dispute.entry} shown={each} now={now} />
          ))}
        </ul>
      )}
    </section>
  );
}
