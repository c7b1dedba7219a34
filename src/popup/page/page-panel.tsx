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
import { PointOffer } from './point-offer.tsx';
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
  const [undoPlaces, setUndoPlaces] = useState<() => Promise<void>>();
  const { reading, settled, readAgain, fail } = usePageReading(tab.id, async () => {
    const places = pointed ? await takePointed(tab.id, site) : [];
    const known = places.length === 0 ? setup : await remember(places);
    return readingContext(site, known, await recent());
  });
  const remember = async (places: readonly PointedPlace[]) => {
    const kept = await rememberPlaces(store, site, places);
    if (!kept.ok) throw new Error(kept.message);
    const known = { ...setup, ...(await store.setup()) };
    setRemembered(places);
    setUndoPlaces(() => async () => {
      const back = await store.undo(...kept.value.map(({ id }) => id));
      if (!back.ok) return fail(back.message);
      setRemembered([]);
      onSetup({ ...known, ...(await store.setup()) });
      readAgain();
    });
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
        <>
          <p class="note warning" role="alert">
            {reading.message}
          </p>
          <div class="row">
            <button type="button" class="main" onClick={readAgain}>
              Read it again
            </button>
            <button type="button" onClick={onLeave}>
              Type the lot in
            </button>
          </div>
        </>
      )}
      {remembered.length > 0 && (
        <div class="note small row apart" role="status">
          <span>
            Remembered for {site}: {remembered.map(({ label }) => `“${label}”`).join(', ')}. You can remove it in Setup,
            Sites.
          </span>
          {undoPlaces !== undefined && (
            <button type="button" onClick={() => undoPlaces().catch((error: unknown) => fail(String(error)))}>
              Undo
            </button>
          )}
        </div>
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
          <Found page={reading.page} desk={desk} settled={settled} onPoint={point} onLeave={onLeave} />
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
  readonly onLeave: () => void;
}

function Found({ page, desk, settled, onPoint, onLeave }: FoundProps) {
  const [only] = page.lots;
  if (page.kind === 'many') {
    return (
      <>
        <LotChecklist desk={desk} page={page} settled={settled} />
        <PointOffer onPoint={onPoint}>Something missing on each lot? Point at it on one of them:</PointOffer>
      </>
    );
  }
  if (only !== undefined) {
    return <OneLot key={only.key} desk={desk} draft={only} readAt={page.readAt} settled={settled} onPoint={onPoint} />;
  }
  return (
    <div class="stack page-lot">
      <p>
        <strong>No lot was found on this page.</strong> Open the page of one lot, or a list of lots, and read that.
      </p>
      <PointOffer onPoint={onPoint}>Or is there one? Point at what it says:</PointOffer>
      <div>
        <button type="button" onClick={onLeave}>
          Type the lot in
        </button>
      </div>
    </div>
  );
}
