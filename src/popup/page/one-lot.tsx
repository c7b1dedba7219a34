import { useEffect, useMemo, useState } from 'preact/hooks';
import { openCompanion } from '../../browser/pages.ts';
import { type DraftEdit, editedFacts, isAsked, unedited, withDraft } from '../../capture/draft/draft-edit.ts';
import type { DraftFieldName, DraftLot } from '../../capture/draft/draft-lot.ts';
import type { SeenBefore } from '../../capture/draft/seen-before.ts';
import { carName, lotTitle } from '../../domain/lot/car-name.ts';
import type { LotFacts, LotField } from '../../domain/lot/lot.ts';
import type { Instant } from '../../domain/time/instant.ts';
import type { LotState } from '../../folds/lot-state.ts';
import type { PageDesk } from '../../reading/page-desk.ts';
import { ChoiceInput } from '../../ui/inputs/choice-input.tsx';
import { ChangeList } from './change-list.tsx';
import { CompOffer } from './comp-offer.tsx';
import { DraftRows } from './draft-rows.tsx';
import { DRAFT_FIELDS } from './draft-words.ts';
import { SiteOffer } from './site-offer.tsx';
import { StandingNow } from './standing-now.tsx';
import { type PageReading, STILL_WORDS } from './use-page-reading.ts';

interface OneLotProps {
  readonly desk: PageDesk;
  readonly draft: DraftLot;
  readonly readAt: Instant;
  readonly settled: PageReading['settled'];
  readonly onPoint: (name: DraftFieldName, what: string) => void;
}

/** The one lot of a page: what was read, what is known of it already, and one button to keep it. */
export function OneLot({ desk, draft, readAt, settled, onPoint }: OneLotProps) {
  const { setup, site } = desk;
  const [edit, setEdit] = useState<DraftEdit>(() => ({ ...unedited(draft), venueId: undefined }));
  // A page that changed after it was first read: what the user has put in stays.
  useEffect(() => setEdit((before) => withDraft(before, draft)), [draft]);
  const [ownVenue, setOwnVenue] = useState(true);
  const [kept, setKept] = useState<{ readonly lot: LotState; readonly said: string; readonly undo: () => void }>();
  const [said, setSaid] = useState<string>();
  const siteVenueId = desk.venueOfSite;
  const { facts, evidence } = useMemo(
    () => editedFacts(edit, { venues: setup.venues, titles: setup.titles, siteVenueId }),
    [edit, setup, siteVenueId],
  );
  // Which car it is of several is the user's to say, before it can be known or kept.
  const vinOpen = edit.draft.fields.vin?.settled === false;
  const seen = useSeen(desk, vinOpen ? undefined : facts, readAt);
  const [left, setLeft] = useState<ReadonlyMap<LotField, boolean>>(new Map());
  // A lot that was dropped is not brought back by an update; it can be watched anew.
  const watched = seen?.kind === 'same' && !seen.lot.dropped ? seen.lot : undefined;
  const changes = watched !== undefined && seen?.kind === 'same' ? seen.changes : [];
  const ticked = new Set(changes.filter(({ field, taken }) => left.get(field) ?? taken).map(({ field }) => field));

  const finish = (
    answer: Awaited<ReturnType<PageDesk['watch']>>,
    words: string,
    forgetVenue: Awaited<ReturnType<typeof remember>>,
  ) => {
    if (!answer.ok) return setSaid(answer.message);
    const { lot, undo: undoLot } = answer.value;
    const undo = async () => {
      const venue = await forgetVenue?.();
      return venue?.ok === false ? venue : undoLot();
    };
    setSaid(undefined);
    setKept({
      lot,
      said: words,
      undo: () => void undo().then((taken) => (taken.ok ? setKept(undefined) : setSaid(taken.message))),
    });
  };
  const remember = async () => {
    if (edit.venueId === undefined || !ownVenue) return undefined;
    const venue = await desk.rememberVenue(edit.venueId);
    return venue.ok ? venue.value : undefined;
  };
  /** Whether the page still says what is shown, so that it may be kept. */
  const stillSo = async () => {
    setSaid('Checking that the page still says so…');
    const now = await settled();
    setSaid(STILL_WORDS[now]);
    return now === 'same';
  };
  const watch = async () => {
    if (!(await stillSo())) return;
    const forget = await remember();
    finish(await desk.watch({ facts, evidence }), 'Added to your list.', forget);
  };
  const update = async (lot: LotState) => {
    if (!(await stillSo())) return;
    const forget = await remember();
    const set: LotFacts = Object.fromEntries(Object.entries(facts).filter(([field]) => ticked.has(field as LotField)));
    const sources = Object.fromEntries(Object.entries(evidence).filter(([field]) => ticked.has(field as LotField)));
    finish(
      await desk.update(lot.id, set, sources),
      `${ticked.size === 1 ? 'One fact is' : `${ticked.size} facts are`} new.`,
      forget,
    );
  };

  if (kept !== undefined) {
    return (
      <section class="stack" aria-label="Saved">
        <h1>{lotTitle(kept.lot.facts)}</h1>
        <p role="status" class="strong">
          {kept.said}
        </p>
        <StandingNow lot={kept.lot} setup={setup} />
        <SiteOffer site={site} />
        <div class="row">
          <button
            type="button"
            class="main"
            onClick={() => openCompanion(`#/lot/${kept.lot.id}`).then(() => window.close())}
          >
            Open its worksheet
          </button>
          <button type="button" onClick={kept.undo}>
            Undo
          </button>
        </div>
      </section>
    );
  }
  return (
    <section class="page-lot" aria-label="The lot on this page">
      <h1>{carName(facts) || draft.heading || 'A lot without a name'}</h1>
      {watched !== undefined && (
        <div class="note stack">
          <p>
            <strong>This lot is already on your list.</strong>{' '}
            {changes.length === 0 ? 'The page says nothing new.' : 'The page now says:'}
          </p>
          {changes.length > 0 && (
            <ChangeList
              changes={changes}
              setup={setup}
              ticked={ticked}
              onTick={(field, on) => setLeft((before) => new Map(before).set(field, on))}
            />
          )}
          <StandingNow lot={watched} setup={setup} />
          <SiteOffer site={site} />
        </div>
      )}
      {seen?.kind === 'same' && seen.lot.dropped && (
        <p class="note">You removed this lot from your list. Watching it now starts over.</p>
      )}
      {seen?.kind === 'earlier-life' && <EarlierLives lots={seen.lots} />}
      <DraftRows edit={edit} setup={setup} venueId={edit.venueId ?? facts.venueId} onEdit={setEdit} onPoint={onPoint} />
      <div class="fields">
        <ChoiceInput
          label="Venue in your setup"
          value={facts.venueId}
          none="Not set"
          choices={setup.venues.map(({ id, name }) => ({ value: id, label: name }))}
          onCommit={(venueId) => setEdit({ ...edit, venueId })}
        />
        <ChoiceInput
          label="Title in your setup"
          value={facts.titleId}
          none="Not set"
          choices={setup.titles.map(({ id, name }) => ({ value: id, label: name }))}
          onCommit={(titleId) => setEdit({ ...edit, titleId })}
        />
      </div>
      {edit.venueId !== undefined && site !== '' && (
        <label class="row small">
          <input type="checkbox" checked={ownVenue} onChange={(event) => setOwnVenue(event.currentTarget.checked)} />
          Use this venue and its time zone for every page of {site}
        </label>
      )}
      <CompOffer desk={desk} drafts={[edit.draft]} readAt={readAt} />
      <div class="page-keep row">
        <StillOpen edit={edit} />
        {watched === undefined ? (
          <button type="button" class="main" disabled={vinOpen} onClick={() => void watch()}>
            {vinOpen ? 'Choose the VIN first' : 'Watch this lot'}
          </button>
        ) : (
          <button type="button" class="main" disabled={ticked.size === 0} onClick={() => void update(watched)}>
            {ticked.size === 0
              ? 'Nothing to update'
              : `Update ${ticked.size === 1 ? 'one fact' : `${ticked.size} facts`}`}
          </button>
        )}
        {watched !== undefined && (
          <button type="button" onClick={() => openCompanion(`#/lot/${watched.id}`).then(() => window.close())}>
            Open its worksheet
          </button>
        )}
        <span role="status" class="small">
          {said ?? ''}
        </span>
      </div>
    </section>
  );
}

/** What watching now leaves open, beside the button that does it. */
function StillOpen({ edit }: { edit: DraftEdit }) {
  const open = DRAFT_FIELDS.filter(({ name }) => name !== 'vin' && isAsked(edit, name));
  if (open.length === 0) return null;
  const empty = open.filter(({ name }) => edit.draft.fields[name]?.settled === false).map(({ label }) => label);
  return (
    <p class="small still-open">
      Open questions: {open.map(({ label }) => label).join(', ')}.{' '}
      {empty.length > 0 && `If you don’t answer, ${empty.join(', ')} will be left empty.`}
    </p>
  );
}

function EarlierLives({ lots }: { lots: readonly string[] }) {
  return (
    <p class="note">
      This car was watched before, in another sale.{' '}
      {lots.slice(0, 3).map((id, at) => (
        <button
          key={id}
          type="button"
          class="plain inline"
          onClick={() => openCompanion(`#/lot/${id}`).then(() => window.close())}
        >
          {at === 0 ? 'See it as it was then' : 'and then'}
        </button>
      ))}
    </p>
  );
}

/** What the list knows about the lot; asked again when a fact that tells lots apart was corrected. */
function useSeen(desk: PageDesk, facts: LotFacts | undefined, readAt: Instant): SeenBefore | undefined {
  const [seen, setSeen] = useState<SeenBefore>();
  useEffect(() => {
    let current = true;
    if (facts === undefined) {
      setSeen(undefined);
      return;
    }
    desk.seen(facts, readAt).then(
      (found) => current && setSeen(found),
      (error: unknown) => reportError(error),
    );
    return () => {
      current = false;
    };
  }, [desk, facts, readAt]);
  return seen;
}
