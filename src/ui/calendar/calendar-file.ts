import { attempt } from '../../domain/attempt.ts';
import { closingEvent } from '../../domain/calendar/closing-event.ts';
import { writeCalendar } from '../../domain/calendar/write-calendar.ts';
import type { LotId } from '../../domain/lot/lot.ts';
import { type Outcome, ok, refuse } from '../../domain/outcome.ts';
import type { Setup } from '../../domain/setup/setup.ts';
import type { Instant } from '../../domain/time/instant.ts';
import type { LotRevision, LotRevisions } from '../../folds/lot-revisions.ts';
import type { LotState } from '../../folds/lot-state.ts';
import { type GoneLot, takenUp } from '../../folds/taken-up.ts';
import type { Store } from '../../store/store.ts';
import { alertLot } from '../../views/lots/alert-lots.ts';
import { standingsUnder } from '../../views/lots/standing.ts';
import { stopWords } from '../../views/lots/stop-words.ts';

/** What goes into a file: one lot, or the closings of a stretch of time. */
export type CalendarChoice = { readonly lot: LotId } | { readonly from: Instant; readonly before: Instant };

export interface CalendarFile {
  readonly blob: Blob;
  /** Why closings are not in it, a sentence each. */
  readonly left: readonly string[];
}

/**
 * Closings as an iCalendar file. A stretch of time also brings the lots that once closed in it and now close at another
 * time, are no longer watched or have no close any more: a calendar that has them already must move them or strike them
 * out. So it does with those whose import was undone.
 */
export async function calendarFile(store: Store, setup: Setup, choice: CalendarChoice): Promise<Outcome<CalendarFile>> {
  const [revisions, lots] = await Promise.all([store.lotRevisions(), store.allLots()]);
  const gone = await store.goneLots(revisions);
  const before = takenUp(gone, lots);
  const standings = standingsUnder(setup);
  const events = [];
  const left: string[] = [];
  for (const lot of lots) {
    const revision = revisionWith(revisions, lot.id, before.get(lot.id));
    const at = lot.facts.close?.instant ?? revision.closes.at(-1);
    if (at === undefined || !belongs(lot, revision, choice)) continue;
    const { id, facts } = lot;
    const stop = stopWords(standings.of(lot));
    const watched = alertLot(lot, standings);
    const event = attempt(() =>
      closingEvent(
        { id: before.get(id)?.[0] ?? id, facts, at, stop, watched, over: endOf(lot), revision },
        setup.store,
        setup.alerts,
      ),
    );
    if (event.ok) events.push(event.value);
    else left.push(event.message);
  }
  for (const event of cancelled(gone, before, revisions, { setup, choice })) events.push(event);
  if (events.length === 0) {
    return refuse('nothing-closes', left[0] ?? 'Nothing closes then, so there is no file to save.');
  }
  events.sort((a, b) => a.at - b.at || (a.uid < b.uid ? -1 : 1));
  return ok({ blob: new Blob([writeCalendar(events)], { type: 'text/calendar;charset=utf-8' }), left });
}

/** A lot that was brought in again goes on counting where it was left, so that a calendar takes the later file for it. */
function revisionWith(revisions: LotRevisions, id: LotId, before: readonly LotId[] = []): LotRevision {
  const own = revisions.of(id);
  const earlier = before.map((each) => revisions.of(each).count);
  return { ...own, count: earlier.reduce((sum, count) => sum + count, own.count) };
}

/**
 * Lots whose import was undone, and which did not come in again: the calendar strikes them out. All that close later too,
 * because the user may have saved those weeks already and has no reason to open them again.
 */
function cancelled(
  gone: readonly GoneLot[],
  before: ReadonlyMap<LotId, readonly LotId[]>,
  revisions: LotRevisions,
  { setup, choice }: { readonly setup: Setup; readonly choice: CalendarChoice },
) {
  if ('lot' in choice) return [];
  const backAgain = new Set([...before.values()].flat());
  return gone.flatMap(({ lot: { id, facts } }) => {
    const revision = revisionWith(revisions, id, before.get(id));
    const at = revision.closes.at(-1);
    if (at === undefined || backAgain.has(id) || !revision.closes.some((close) => close >= choice.from)) return [];
    const first = before.get(id)?.[0] ?? id;
    const event = { id: first, facts, at, stop: '', watched: null, over: 'import-undone' as const, revision };
    return [closingEvent(event, setup.store, setup.alerts)];
  });
}

function belongs(lot: LotState, { closes }: LotRevision, choice: CalendarChoice): boolean {
  if ('lot' in choice) return lot.id === choice.lot;
  const within = (close: Instant) => close >= choice.from && close < choice.before;
  return closes.some(within) || (lot.facts.close !== undefined && within(lot.facts.close.instant));
}

function endOf({ dropped, facts, sale }: LotState) {
  if (dropped) return 'dropped';
  return sale?.result?.result.ended ?? (facts.close === undefined ? 'no-close' : undefined);
}
