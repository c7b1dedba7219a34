import { useEffect, useMemo, useState } from 'preact/hooks';
import { factsOf } from '../../capture/draft/draft-facts.ts';
import type { DraftLots } from '../../capture/draft/draft-lot.ts';
import type { SeenBefore } from '../../capture/draft/seen-before.ts';
import { sayClose } from '../../domain/close/say-close.ts';
import { carName } from '../../domain/lot/car-name.ts';
import type { LotFacts } from '../../domain/lot/lot.ts';
import { formatMoney } from '../../domain/money/format-money.ts';
import type { Setup } from '../../domain/setup/setup.ts';
import { instant } from '../../domain/time/instant.ts';
import { type ListedLot, newsOf, takeListed } from '../../reading/listed-lots.ts';
import type { PageDesk } from '../../reading/page-desk.ts';
import { CompOffer } from './comp-offer.tsx';
import { type PageReading, STILL_WORDS } from './use-page-reading.ts';

interface LotChecklistProps {
  readonly desk: PageDesk;
  readonly page: DraftLots;
  readonly settled: PageReading['settled'];
}

/** The lots of a list page, to be ticked: new ones are watched, watched ones brought up to date. */
export function LotChecklist({ desk, page, settled }: LotChecklistProps) {
  const { setup, venueOfSite } = desk;
  const [seen, setSeen] = useState<ReadonlyMap<string, SeenBefore>>(new Map());
  const [ticked, setTicked] = useState<ReadonlySet<string>>(new Set());
  const [said, setSaid] = useState<string>();
  const [undo, setUndo] = useState<() => Promise<void>>();
  const [round, setRound] = useState(0);
  const known = { venues: setup.venues, titles: setup.titles, siteVenueId: venueOfSite };
  const lots = useMemo(
    () => page.lots.map((draft) => ({ key: draft.key, heading: draft.heading, ...factsOf(draft, known) })),
    [page, setup, venueOfSite],
  );

  // Asked again after each round of keeping.
  useEffect(() => {
    let current = true;
    Promise.all(lots.map(async (lot) => [lot.key, await desk.seenQuietly(lot.facts, page.readAt)] as const)).then(
      (found) => current && setSeen(new Map(found)),
      (error: unknown) => reportError(error),
    );
    return () => {
      current = false;
    };
  }, [desk, lots, page, round]);

  const listed = lots.map((lot): ListedLot => ({ ...lot, seen: seen.get(lot.key) ?? { kind: 'new' } }));
  const open = listed.filter((lot) => newsOf(lot) !== 'nothing');
  const chosen = open.filter(({ key }) => ticked.has(key));
  const take = async () => {
    setSaid('Checking that the page still says so…');
    const now = await settled();
    if (now !== 'same') return setSaid(STILL_WORDS[now]);
    const taken = await takeListed(desk, chosen);
    setSaid(taken.said);
    setUndo(() => async () => {
      const back = await taken.undo();
      setSaid(back.ok ? 'Undone.' : back.message);
      setUndo(undefined);
      setRound(round + 1);
    });
    setTicked(new Set());
    setRound(round + 1);
  };
  const all = open.length > 0 && chosen.length === open.length;
  return (
    <section class="page-lot" aria-label="The lots on this page">
      <div class="row apart">
        <h1>{lots.length} lots on this page</h1>
        <button
          type="button"
          class="plain"
          disabled={open.length === 0}
          onClick={() => setTicked(all ? new Set() : new Set(open.map(({ key }) => key)))}
        >
          {all ? 'Check none' : 'Check all'}
        </button>
      </div>
      <ul class="checklist">
        {listed.map((lot) => {
          const news = newsOf(lot);
          return (
            <li key={lot.key}>
              <label class="checklist-lot">
                <input
                  type="checkbox"
                  disabled={news === 'nothing'}
                  checked={ticked.has(lot.key)}
                  onChange={(event) => {
                    const next = new Set(ticked);
                    if (event.currentTarget.checked) next.add(lot.key);
                    else next.delete(lot.key);
                    setTicked(next);
                  }}
                />
                <span>
                  <span class="strong">{carName(lot.facts) || lot.heading}</span>
                  <span class="small quiet checklist-facts">{factsInLine(lot.facts, setup)}</span>
                  <span class="small quiet checklist-facts">{lot.facts.vin}</span>
                </span>
                <span class="small checklist-news">{NEWS_WORDS[news]}</span>
              </label>
            </li>
          );
        })}
      </ul>
      <CompOffer
        desk={desk}
        drafts={ticked.size === 0 ? page.lots : page.lots.filter(({ key }) => ticked.has(key))}
        readAt={page.readAt}
      />
      <div class="page-keep row">
        <button type="button" class="main" disabled={chosen.length === 0} onClick={() => void take()}>
          {buttonWords(chosen)}
        </button>
        {undo !== undefined && (
          <button type="button" onClick={() => void undo()}>
            Undo
          </button>
        )}
        <span role="status" class="small">
          {said ?? ''}
        </span>
      </div>
    </section>
  );
}

const NEWS_WORDS: Record<ReturnType<typeof newsOf>, string> = {
  new: '',
  again: 'sold before',
  news: 'on your list, has news',
  nothing: 'watched',
};

function buttonWords(chosen: readonly ListedLot[]): string {
  const fresh = chosen.filter((lot) => newsOf(lot) !== 'news').length;
  const updates = chosen.length - fresh;
  if (chosen.length === 0) return 'Check the lots to watch';
  const watch = fresh === 0 ? '' : `Watch ${fresh === 1 ? 'one lot' : `${fresh} lots`}`;
  if (updates === 0) return watch;
  return watch === '' ? `Update ${updates}` : `${watch}, update ${updates}`;
}

function factsInLine(facts: LotFacts, setup: Setup): string {
  return [
    facts.lotNumber && `lot ${facts.lotNumber}`,
    facts.miles === undefined ? undefined : `${facts.miles.toLocaleString('en-US')} mi`,
    facts.priceNow === undefined ? undefined : formatMoney(facts.priceNow),
    facts.close === undefined ? undefined : `closes ${sayClose(facts.close, setup.store.zone, instant(Date.now()))}`,
  ]
    .filter(Boolean)
    .join(' · ');
}
