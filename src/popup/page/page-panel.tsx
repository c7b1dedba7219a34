import { useContext, useMemo, useState } from 'preact/hooks';
import type { FrontTab } from '../../browser/page-access.ts';
import type { DraftFieldName, DraftLots } from '../../capture/draft/draft-lot.ts';
import type { Setup } from '../../domain/setup/setup.ts';
import type { PointedPlace } from '../../domain/setup/site.ts';
import type { LotState } from '../../folds/lot-state.ts';
import { pageDesk, rememberPlaces } from '../../reading/page-desk.ts';
import { startPointing, takePointed } from '../../reading/read-tab.ts';
import { readingContext } from '../../reading/reading-context.ts';
import type { Store } from '../../store/store.ts';
import { Planned } from '../planned.ts';
import { LotChecklist } from './lot-checklist.tsx';
import { OneLot } from './one-lot.tsx';
import { type PageReading, usePageReading } from './use-page-reading.ts';

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

/** Reads the page in front, and shows what it found before anything is kept. */
export function PagePanel({ store, setup, tab, site, recent, pointed, onSetup, onLeave }: PagePanelProps) {
  const [remembered, setRemembered] = useState<readonly PointedPlace[]>([]);
  const planned = useContext(Planned);
  const desk = useMemo(
    () => pageDesk({ store, setup, planned, recent, tab: tab.id, site }),
    [store, setup, planned, recent, tab, site],
  );
  const { reading, settled, fail } = usePageReading(tab.id, async () => {
    const places = pointed ? await takePointed(tab.id, site) : [];
    const known = places.length === 0 ? setup : await remember(places);
    return readingContext(site, known, await recent());
  });
  const remember = async (places: readonly PointedPlace[]) => {
    const kept = await rememberPlaces(store, site, places);
    if (!kept.ok) throw new Error(kept.message);
    const known = { ...setup, ...(await store.setup()) };
    setRemembered(places);
    onSetup(known);
    return known;
  };
  const point = (name: DraftFieldName, what: string) => {
    recent()
      .then((lots) => startPointing(tab.id, name, what, readingContext(site, setup, lots)))
      .then((begun) => {
        if (begun.ok) window.close();
        else fail(begun.message);
      })
      .catch((error: unknown) => {
        fail(`Pointing did not begin: ${String(error)}`);
        reportError(error);
      });
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
          {reading.changed && (
            <p class="note warning" role="alert">
              The page changed after it was first read. This is what it says now: check the price and the close.
            </p>
          )}
          <Found page={reading.page} desk={desk} settled={settled} onPoint={point} />
        </>
      )}
    </div>
  );
}

interface FoundProps {
  readonly page: DraftLots;
  readonly desk: ReturnType<typeof pageDesk>;
  readonly settled: PageReading['settled'];
  readonly onPoint: (name: DraftFieldName, what: string) => void;
}

function Found({ page, desk, settled, onPoint }: FoundProps) {
  const [only] = page.lots;
  if (page.kind === 'many') return <LotChecklist desk={desk} page={page} settled={settled} />;
  if (only !== undefined) {
    return <OneLot key={only.key} desk={desk} draft={only} readAt={page.readAt} settled={settled} onPoint={onPoint} />;
  }
  return (
    <p>
      <strong>No lot was found on this page.</strong> Open the page of one lot, or a list of lots, and read that. Or
      type the lot in.
    </p>
  );
}
