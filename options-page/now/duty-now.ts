import { type AlertLot, closesBy, nextClose } from '../../src/domain/alerts/alert-lot.ts';
import { type DutySpan, dutyAt } from '../../src/domain/rush/duty.ts';
import type { RushCalendar } from '../../src/domain/rush/rush-bands.ts';
import type { Instant } from '../../src/domain/time/instant.ts';
import { dateIn } from '../../src/domain/time/wall-clock.ts';
import type { Zone } from '../../src/domain/time/zone.ts';

/** Somebody's next stretch of today. */
export type NextOnDuty = DutySpan & { readonly who: string };

/**
 * Who is on duty now, and whom the plan names next today: who comes after him who is there, or who is there already and may
 * take over what others still hold. Null where the plan names nobody today, or the last busy hours of today are over.
 */
export function dutyNow(
  calendar: Pick<RushCalendar, 'bandsOn'>,
  zone: Zone,
  now: Instant,
): { readonly current: DutySpan | null; readonly next: NextOnDuty | null } | null {
  const spans = calendar.bandsOn(dateIn(zone, now)).flatMap(({ duty }) => duty);
  if (!spans.some(({ who, to }) => who !== undefined && to > now)) return null;
  const current = dutyAt(spans, now) ?? null;
  const next = spans.find(
    (span): span is NextOnDuty => span.from > now && span.who !== undefined && span.who !== current?.who,
  );
  return { current, next: next ?? null };
}

/** What the next one takes over when he takes over now: all that is open and closes until the end of his hours. */
export const lotsForNext = <Lot extends AlertLot>(
  lots: readonly Lot[],
  next: NextOnDuty,
  now: Instant,
): readonly Lot[] =>
  lots.filter(
    (lot) =>
      !lot.ended &&
      lot.done !== true &&
      closesBy(lot) > now &&
      nextClose(lot, now) < next.to &&
      lot.handedTo !== next.who,
  );
