import { type DueTime, deadlineOf } from '../deadline/deadline-of.ts';
import type { CountedFrom, DeadlineRule } from '../deadline/deadline-rule.ts';
import type { Instant } from '../time/instant.ts';
import type { VenuePlace } from './venue-place.ts';

/** When each thing happened that a deadline can count from; what has not happened yet is not in it. */
export type SaleEvents = Readonly<Partial<Record<CountedFrom, Instant>>>;

/**
 * What is known of a deadline: when it ends and why; that it has not begun, because what it counts from has not happened;
 * or that there is no rule for it.
 */
export type Due =
  | { readonly as: 'at'; readonly at: Instant; readonly rule?: DeadlineRule; readonly time?: DueTime }
  | { readonly as: 'waits'; readonly from: CountedFrom; readonly rule: DeadlineRule }
  | { readonly as: 'no-rule' };

/** A rule applied to what has happened. */
export function dueBy(rule: DeadlineRule | undefined, events: SaleEvents, place: VenuePlace): Due {
  if (rule === undefined) return { as: 'no-rule' };
  const from = events[rule.from];
  if (from === undefined) return { as: 'waits', from: rule.from, rule };
  const time = deadlineOf(rule, from, place);
  return { as: 'at', at: time.at, rule, time };
}

/** The moment of a deadline, where there is one. */
export const dueAt = (due: Due): Instant | undefined => (due.as === 'at' ? due.at : undefined);
