import { DISPUTE_REASONS, type DisputeReason } from '../setup/after-sale-rules.ts';
import type { Instant } from '../time/instant.ts';
import { type Due, dueBy } from './due.ts';
import type { VenuePlace } from './venue-place.ts';
import { eventsOf, type SoldLot, winStands } from './win.ts';
import { doneAt } from './win-step.ts';

/** A time within which something about a car can be brought up. */
export interface ClaimWindow {
  readonly reason: DisputeReason;
  readonly due: Due;
}

/**
 * How sure a win is:
 * - `final`: every claim window is over, the title is in, and nobody disputes it;
 * - `open`: not yet, for the reasons in `because`;
 * - `undone`: the sale does not stand any more.
 */
export type WinStanding =
  | { readonly as: 'final'; readonly since: Instant }
  | { readonly as: 'open'; readonly because: readonly OpenReason[] }
  | { readonly as: 'undone' };

export type OpenReason =
  | { readonly kind: 'dispute' }
  | { readonly kind: 'no-title' }
  | { readonly kind: 'window'; readonly until: Instant }
  /** A window that has not begun: the car, say, has not been delivered. */
  | { readonly kind: 'window-waits'; readonly from: 'payment' | 'delivery' | 'title' | 'sale' | 'notice' }
  | { readonly kind: 'no-rules' };

/** Reasons that are about a car we have; a bid that was not taken and a sale that is undone are about one we have not. */
const ABOUT_A_WIN: readonly DisputeReason[] = DISPUTE_REASONS.filter(
  (reason) => reason !== 'bid-not-taken' && reason !== 'sale-undone',
);

/**
 * The claim windows of a won lot that the venue's rules name. Once the title is in, none is left for its not coming; a
 * claim that counts from a notice has no end of its own.
 */
export function claimWindows(lot: SoldLot, place: VenuePlace): readonly ClaimWindow[] {
  const events = eventsOf(lot);
  return ABOUT_A_WIN.flatMap((reason) => {
    const rule = place.rules?.disputes[reason]?.claim;
    if (rule === undefined || rule.from === 'notice') return [];
    if (reason === 'title-missing' && rule.from !== 'title' && events.title !== undefined) return [];
    return [{ reason, due: dueBy(rule, events, place) }];
  });
}

/** Whether a win is final. @returns undefined for a lot that was not won */
export function winStanding(lot: SoldLot, place: VenuePlace, now: Instant): WinStanding | undefined {
  if (lot.ended?.result.ended !== 'won') return undefined;
  if (!winStands(lot)) return { as: 'undone' };
  const windows = claimWindows(lot, place);
  const title = doneAt(lot.steps, 'title');
  const because: OpenReason[] = [];
  if (lot.disputes.some(({ outcome }) => outcome === undefined)) because.push({ kind: 'dispute' });
  if (title === undefined) because.push({ kind: 'no-title' });
  if (windows.length === 0) because.push({ kind: 'no-rules' });
  for (const { due } of windows) {
    if (due.as === 'waits') because.push({ kind: 'window-waits', from: due.from });
    else if (due.as === 'at' && due.at >= now) because.push({ kind: 'window', until: due.at });
  }
  if (because.length > 0 || title === undefined) return { as: 'open', because };
  const ends = windows.flatMap(({ due }) => (due.as === 'at' ? due.at : []));
  const closings = lot.disputes.flatMap(({ outcome }) => outcome?.at ?? []);
  return { as: 'final', since: Math.max(title, ...ends, ...closings) as Instant };
}
