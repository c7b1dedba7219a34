import { useState } from 'preact/hooks';
import { openCompanion } from '../../browser/pages.ts';
import { lotTitle } from '../../domain/lot/car-name.ts';
import type { LotField } from '../../domain/lot/lot.ts';
import type { Setup } from '../../domain/setup/setup.ts';
import type { Store } from '../../store/store.ts';
import { AskedNote } from './asked-note.tsx';
import { FACT_WORDS, factInWords } from './fact-words.ts';
import type { PageNews } from './page-news.ts';
import { StandingNow } from './standing-now.tsx';

interface NewsNoteProps {
  readonly news: PageNews;
  readonly store: Store;
  readonly setup: Setup;
}

/** The watched lot that the page in front is about, and what was brought up to date when the page was opened. */
export function NewsNote({ news, store, setup }: NewsNoteProps) {
  const [lot, setLot] = useState(news.lot);
  const [refreshed, setRefreshed] = useState(news.refreshed);
  const [said, setSaid] = useState('');
  const undo = async () => {
    if (refreshed === null) return;
    const taken = await store.undo(refreshed.entry);
    if (!taken.ok) return setSaid(taken.message);
    setRefreshed(null);
    setSaid('Undone.');
    setLot((await store.lot(lot.id)) ?? lot);
  };
  return (
    <div class="stack">
      <div>
        <button
          type="button"
          class="plain inline strong"
          onClick={() => openCompanion(`#/lot/${lot.id}`).then(() => window.close())}
        >
          {lotTitle(lot.facts)}
        </button>
        <StandingNow lot={lot} setup={setup} />
      </div>
      {refreshed !== null && (
        <div class="note row apart">
          <span class="small">
            Updated from this page.
            {Object.entries(refreshed.now).map(([key, after]) => {
              // The keys of facts are fields.
              const field = key as LotField;
              const before = refreshed.was[field];
              return (
                <span key={key} class="news-change">
                  {FACT_WORDS[field] ?? field}: {before !== undefined && `${factInWords(field, before, setup)} → `}
                  <strong>{factInWords(field, after, setup)}</strong>
                  {refreshed.pointed.has(field) && ', from the place you pointed at'}
                </span>
              );
            })}
          </span>
          <button type="button" onClick={() => undo().catch((error: unknown) => setSaid(String(error)))}>
            Undo
          </button>
        </div>
      )}
      {news.asked.map((asked) => (
        <AskedNote key={asked.field} lot={lot} asked={asked} store={store} setup={setup} onTaken={setLot} />
      ))}
      <span role="status" class="small">
        {said}
      </span>
    </div>
  );
}
