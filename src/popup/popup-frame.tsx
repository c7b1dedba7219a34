import { useState } from 'preact/hooks';
import type { FrontTab } from '../browser/page-access.ts';
import type { Setup } from '../domain/setup/setup.ts';
import type { LotState } from '../folds/lot-state.ts';
import { siteOfUrl } from '../reading/reading-context.ts';
import type { Store } from '../store/store.ts';
import { Lazy } from '../ui/lazy.tsx';
import type { PlannedBids } from '../views/lots/planned-bids.ts';
import { NewsNote } from './page/news-note.tsx';
import type { PageNews } from './page/page-news.ts';
import { Planned } from './planned.ts';
import { Popup } from './popup.tsx';
import './page/page.css';

const loadPanel = () => import('./page/page-panel.tsx').then((m) => m.PagePanel);

interface PopupFrameProps {
  readonly store: Store;
  readonly setup: Setup;
  readonly planned: PlannedBids;
  /** What closes next. */
  readonly lots: readonly LotState[];
  /** Reads the lots that closed lately or will close, for telling what on a page is watched already. */
  readonly recent: () => Promise<readonly LotState[]>;
  readonly tab: FrontTab | null;
  readonly task: 'read' | 'pointed' | undefined;
  /** What is known of the page in front without reading it. */
  readonly news: PageNews | null;
}

/** The page in front on top, and the week under it while nothing is made of the page. */
export function PopupFrame({ store, setup: first, planned, lots, recent, tab, task, news }: PopupFrameProps) {
  const [setup, setSetup] = useState(first);
  const [doing, setDoing] = useState(task);
  const busy = tab !== null && doing !== undefined;
  return (
    <Planned.Provider value={planned}>
      {tab !== null && (
        // The role changes and the element stays, so that the focus is not lost.
        <section class="popup popup-page" aria-label="This page" {...(busy ? { role: 'main' } : {})}>
          {busy ? (
            <Lazy
              load={loadPanel}
              props={{
                store,
                setup,
                tab,
                site: siteOfUrl(tab.url),
                recent,
                pointed: doing === 'pointed',
                onSetup: setSetup,
                onLeave: () => setDoing(undefined),
              }}
            />
          ) : (
            <div class="stack">
              {news !== null && <NewsNote news={news} store={store} setup={setup} />}
              <button type="button" class={`page-read ${news === null ? 'main' : ''}`} onClick={() => setDoing('read')}>
                Read this page
              </button>
            </div>
          )}
        </section>
      )}
      {!busy && <Popup store={store} setup={setup} lots={lots} />}
    </Planned.Provider>
  );
}
