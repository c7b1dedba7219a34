import { useEffect, useMemo, useRef, useState } from 'preact/hooks';
import type { FrontTab } from '../../browser/page-access.ts';
import type { DraftFieldName, DraftLots } from '../../capture/draft-lot.ts';
import type { Setup } from '../../domain/setup/setup.ts';
import type { PointedPlace } from '../../domain/setup/site.ts';
import type { LotState } from '../../folds/lot-state.ts';
import { pageDesk, rememberPlaces } from '../../reading/page-desk.ts';
import { readTab, startPointing, takePointed } from '../../reading/read-tab.ts';
import { readingContext } from '../../reading/reading-context.ts';
import type { Store } from '../../store/store.ts';
import { LotChecklist } from './lot-checklist.tsx';
import { OneLot } from './one-lot.tsx';

export interface PagePanelProps {
  readonly store: Store;
  readonly setup: Setup;
  readonly tab: FrontTab;
  readonly site: string;
  /** Lots that closed lately or will close. */
  readonly recent: () => Promise<readonly LotState[]>;
  /** Whether the user has just pointed at something there. */
  readonly pointed: boolean;
  /** Called with the setup as it is after a place was remembered. */
  readonly onSetup: (setup: Setup) => void;
  readonly onLeave: () => void;
}

type Reading =
  | { readonly at: 'reading' }
  | { readonly at: 'failed'; readonly message: string }
  | { readonly at: 'read'; readonly page: DraftLots };

/** Reads the page in front, and shows what it found before anything is kept. */
export function PagePanel({ store, setup, tab, site, recent, pointed, onSetup, onLeave }: PagePanelProps) {
  const [reading, setReading] = useState<Reading>({ at: 'reading' });
  const [remembered, setRemembered] = useState<readonly PointedPlace[]>([]);
  const desk = useMemo(() => pageDesk({ store, setup, recent, tab: tab.id, site }), [store, setup, recent, tab, site]);

  const fail = (error: unknown) => {
    setReading({ at: 'failed', message: `The page could not be read: ${String(error)}` });
    reportError(error);
  };
  const read = async () => {
    const places = pointed ? await takePointed(tab.id, site) : [];
    const known = places.length === 0 ? setup : await remember(places);
    const page = await readTab(tab.id, readingContext(site, known, await recent()));
    setReading(page.ok ? { at: 'read', page: page.value } : { at: 'failed', message: page.message });
  };
  const remember = async (places: readonly PointedPlace[]) => {
    const kept = await rememberPlaces(store, site, places);
    if (!kept.ok) throw new Error(kept.message);
    const known = { ...setup, ...(await store.setup()) };
    setRemembered(places);
    onSetup(known);
    return known;
  };
  const started = useRef(false);
  useEffect(() => {
    if (started.current) return;
    started.current = true;
    read().catch(fail);
  });
  const point = (name: DraftFieldName, what: string) => {
    recent()
      .then((lots) => startPointing(tab.id, name, what, readingContext(site, setup, lots)))
      .then((begun) => {
        if (begun.ok) window.close();
        else setReading({ at: 'failed', message: begun.message });
      }, fail);
  };

  return (
    <div class="stack">
      <div>
        <button type="button" class="plain" onClick={onLeave}>
          ← Closing next
        </button>
      </div>
      {reading.at === 'reading' && <p role="status">Reading the page…</p>}
      {reading.at === 'failed' && (
        <p class="note warning" role="alert">
          {reading.message}
        </p>
      )}
      {remembered.length > 0 && (
        <p class="note small" role="status">
          Remembered for {site}: {remembered.map(({ label }) => `“${label}”`).join(', ')}. You can remove it in Setup,
          Sites.
        </p>
      )}
      {reading.at === 'read' && (
        <>
          {reading.page.notes.map(({ message }) => (
            <p key={message} class="note warning small">
              {message}
            </p>
          ))}
          <Found page={reading.page} desk={desk} onPoint={point} />
        </>
      )}
    </div>
  );
}

interface FoundProps {
  readonly page: DraftLots;
  readonly desk: ReturnType<typeof pageDesk>;
  readonly onPoint: (name: DraftFieldName, what: string) => void;
}

function Found({ page, desk, onPoint }: FoundProps) {
  const [only] = page.lots;
  if (page.kind === 'many') return <LotChecklist desk={desk} page={page} />;
  if (only !== undefined) {
    return <OneLot key={only.key} desk={desk} draft={only} readAt={page.readAt} onPoint={onPoint} />;
  }
  return (
    <p>
      <strong>No lot was found on this page.</strong> Open the page of one lot, or a list of lots, and read that. Or
      type the lot in.
    </p>
  );
}
