import { useContext, useEffect, useState } from 'preact/hooks';
import { openCompanion } from '../browser/pages.ts';
import type { BidState } from '../domain/bid/bid-state.ts';
import { bidWords } from '../domain/bid/bid-words.ts';
import { lotTitle } from '../domain/lot/car-name.ts';
import { ZERO } from '../domain/money/cents.ts';
import { formatMoney } from '../domain/money/format-money.ts';
import type { Setup } from '../domain/setup/setup.ts';
import { sayTime } from '../domain/time/say-time.ts';
import { HOUR } from '../domain/time/units.ts';
import type { LotState } from '../folds/lot-state.ts';
import type { Store } from '../store/store.ts';
import { useNow } from '../ui/hooks/use-now.ts';
import { Lazy } from '../ui/lazy.tsx';
import { standingsUnder } from '../views/lots/standing.ts';
import { noStopWords, plannedWords } from '../views/lots/stop-words.ts';
import { timeLeft } from '../views/words/close-words.ts';
import { Planned } from './planned.ts';
import { QuickAdd } from './quick-add.tsx';
import { WaitingNote } from './sale/waiting-note.tsx';
import { TeamStep } from './team-step.tsx';
import './popup.css';

const loadNote = () => import('./sale/sale-note.tsx').then((m) => m.SaleNote);

/** More than fit the list's height; the others come once these stand. */
const IN_SIGHT = 8;

interface PopupProps {
  readonly store: Store;
  readonly setup: Setup;
  readonly lots: readonly LotState[];
}

/** What the toolbar button opens: what closes next with the number to stop at, and a lot to add. */
export function Popup({ store, setup, lots: first }: PopupProps) {
  const now = useNow(1000);
  const [lots, setLots] = useState(first);
  const planned = useContext(Planned);
  const [standings] = useState(() => standingsUnder(setup, planned));
  const [noting, setNoting] = useState<string>();
  const [wholeList, setWholeList] = useState(false);
  useEffect(() => setWholeList(true), []);
  const replaced = (lot: LotState) => setLots((before) => before.map((one) => (one.id === lot.id ? lot : one)));
  const open = (route: string) => openCompanion(route).then(() => window.close());
  return (
    <main class="popup">
      <TeamStep store={store} zone={setup.store.zone} />
      <header class="row apart">
        <h1>Closing next</h1>
        <span class="row">
          <button type="button" class="plain" onClick={() => open('#/now')}>
            Now
          </button>
          <button type="button" class="plain" onClick={() => open('#/lots')}>
            All lots
          </button>
        </span>
      </header>
      {lots.length === 0 ? (
        <p>
          Nothing closes in the next seven days. Add a lot below, or add a whole list on the{' '}
          <button type="button" class="plain inline" onClick={() => open('#/add')}>
            Add lots
          </button>{' '}
          page.
        </p>
      ) : (
        <ul class="popup-list">
          {(wholeList ? lots : lots.slice(0, IN_SIGHT)).map((lot) => {
            const standing = standings.of(lot);
            const bid = standings.bids.at(lot, now);
            const close = lot.facts.close?.instant;
            return (
              <li key={lot.id}>
                <button type="button" class="popup-lot" onClick={() => open(`#/lot/${lot.id}`)}>
                  <span class="popup-name">{lotTitle(lot.facts)}</span>
                  <span class="popup-max">
                    {noStopWords(standing) ?? formatMoney(standing.maxBid ?? ZERO)}
                    {standing.planned !== undefined && (
                      <span class="small popup-plan">plan: {plannedWords(standing)}</span>
                    )}
                  </span>
                  <span class="popup-line small">
                    <span class="quiet">
                      {close !== undefined && (
                        <>
                          <strong class={close > now && close - now < HOUR ? 'act' : ''}>{timeLeft(close, now)}</strong>
                          {' · '}
                          {sayTime(close, setup.store.zone)}
                        </>
                      )}
                    </span>
                    <span class={bid.loud ? 'act' : ''}>
                      {[standing.why, bidWords(bid)].filter(Boolean).join(' · ')}
                    </span>
                  </span>
                </button>
                <button
                  type="button"
                  class="plain popup-note small"
                  aria-expanded={noting === lot.id}
                  onClick={() => setNoting(noting === lot.id ? undefined : lot.id)}
                >
                  {noteWords(bid)}
                  <span class="visually-hidden"> {lotTitle(lot.facts)}</span>
                </button>
                {noting === lot.id && (
                  <Lazy load={loadNote} props={{ store, setup, lot, standings, now, onKept: replaced }} />
                )}
              </li>
            );
          })}
        </ul>
      )}
      <WaitingNote store={store} onOpen={() => open('#/results/missing')} />
      <QuickAdd
        store={store}
        setup={setup}
        onAdded={(lot) =>
          setLots((before) =>
            [...before, lot].sort((a, b) => (a.facts.close?.instant ?? 0) - (b.facts.close?.instant ?? 0)),
          )
        }
      />
    </main>
  );
}

function noteWords(bid: BidState): string {
  if (bid.is !== 'ended') return bid.mayHaveClosed ? 'Did it close?' : 'Record a bid';
  return bid.result === undefined ? 'How did it end?' : 'Correct the result';
}
