import { useMemo, useState } from 'preact/hooks';
import { lotTitle } from '../../src/domain/lot/car-name.ts';
import { instant } from '../../src/domain/time/instant.ts';
import { sayTime } from '../../src/domain/time/say-time.ts';
import { MINUTE } from '../../src/domain/time/units.ts';
import { useNow } from '../../src/ui/hooks/use-now.ts';
import { useOneLot } from '../../src/ui/hooks/use-one-lot.ts';
import { StillReading } from '../../src/ui/still-reading.tsx';
import { useWorkspace } from '../../src/ui/workspace.ts';
import { OpenDisputeForm } from './open-dispute-form.tsx';
import './disputes.css';

const MOST = 30;

/** Opens a dispute: about the lot that the address names, or one that is chosen here. */
export function OpenDisputeScreen({ lot }: { lot: string }) {
  return lot === '' ? <ChooseLot /> : <AboutLot id={lot} />;
}

function AboutLot({ id }: { id: string }) {
  const lot = useOneLot(id);
  if (lot === undefined) return <StillReading title="Open a dispute" words="Reading the lot…" />;
  if (lot === null) return <ChooseLot />;
  return <OpenDisputeForm lot={lot} />;
}

/** The lots whose sale is over, the latest first. */
function ChooseLot() {
  const { lots, setup } = useWorkspace();
  const now = instant(Math.floor(useNow(15_000) / MINUTE) * MINUTE);
  const [search, setSearch] = useState('');
  const found = useMemo(() => {
    const words = search.toLowerCase().split(/\s+/).filter(Boolean);
    return lots
      .map((lot) => ({ lot, over: lot.sale?.result?.at ?? lot.facts.close?.instant ?? Number.POSITIVE_INFINITY }))
      .filter(({ over }) => over <= now)
      .filter(({ lot: { facts } }) => {
        const text = [lotTitle(facts), facts.vin, facts.lotNumber, facts.venueName].join(' ').toLowerCase();
        return words.every((word) => text.includes(word));
      })
      .sort((a, b) => b.over - a.over);
  }, [lots, now, search]);
  return (
    <section class="stack">
      <h1>Open a dispute</h1>
      <p>Which sale is it about?</p>
      <input
        class="dispute-search"
        type="search"
        aria-label="Search the sales"
        placeholder="Search: car, VIN, lot, venue"
        value={search}
        onInput={(event) => setSearch(event.currentTarget.value)}
      />
      {found.length === 0 ? (
        <p>
          {search === ''
            ? 'No lot has closed yet. A dispute is about a lot that has closed.'
            : `No closed lot matches “${search}”.`}
        </p>
      ) : (
        <ul class="dispute-rows">
          {found.slice(0, MOST).map(({ lot, over }) => (
            <li key={lot.id} class="dispute-choice">
              <a href={`#/open-dispute/${lot.id}`}>{lotTitle(lot.facts)}</a>
              <span class="quiet small">
                {lot.facts.venueName ?? lot.facts.venueId} · {sayTime(instant(over), setup.store.zone)}
                {lot.sale?.result?.result.ended === 'won' && ' · won'}
              </span>
            </li>
          ))}
        </ul>
      )}
      {found.length > MOST && (
        <p class="quiet small">
          The latest {MOST} of {found.length}. Search to find an earlier one.
        </p>
      )}
    </section>
  );
}
