import type { Due } from '../../domain/after-sale/due.ts';
import type { VenuePlace } from '../../domain/after-sale/venue-place.ts';
import { FROM_WORDS, putOffInWords, ruleInWords, skippedInWords } from '../../domain/deadline/deadline-words.ts';
import type { Instant } from '../../domain/time/instant.ts';
import { sayDuration } from '../../domain/time/say-duration.ts';
import { sayTime } from '../../domain/time/say-time.ts';
import { DAY } from '../../domain/time/units.ts';
import { wallClock } from '../../domain/time/wall-clock.ts';
import type { Zone } from '../../domain/time/zone.ts';
import { useWorkspace } from '../workspace.ts';

export interface DueTextProps {
  readonly due: Due;
  readonly now: Instant;
  readonly place: VenuePlace;
}

/** Until when, on the store's clock and where it differs on the venue's; or why there is no date yet. */
export function DueText({ due, now, place }: DueTextProps) {
  const { setup } = useWorkspace();
  if (due.as === 'no-rule') return <span class="missing">no date</span>;
  if (due.as === 'waits') return <span class="missing">counts from {FROM_WORDS[due.from]}</span>;
  const { late, words } = leftWords(due.at, now);
  return (
    <span class="due-text">
      <span class={late || due.at - now < DAY ? 'act' : 'strong'}>{words}</span>
      <span class="quiet small">
        {sayTime(due.at, setup.store.zone)}
        {venueClock(due.at, place.zone, setup.store.zone)}
      </span>
    </span>
  );
}

/** "in 2 days 3 h", or "5 h overdue". */
export function leftWords(at: Instant, now: Instant): { readonly late: boolean; readonly words: string } {
  return at >= now
    ? { late: false, words: `in ${inDays(at - now)}` }
    : { late: true, words: `${inDays(now - at)} overdue` };
}

/** Deadlines are days away, so the days are written out. */
const inDays = (ms: number): string =>
  sayDuration(ms).replace(/^(\d+) d\b/, (_, days: string) => (days === '1' ? '1 day' : `${days} days`));

/** ", 5:00 PM there" where the venue's clock shows another time. */
function venueClock(at: Instant, zone: Zone, storeZone: Zone): string {
  const [there, here] = [wallClock(at, zone), wallClock(at, storeZone)];
  if (there.time === here.time && there.date === here.date) return '';
  const time = sayTime(at, zone);
  return ` · ${there.date === here.date ? time.slice(time.indexOf(',') + 2) : time} there`;
}

/** How a date was counted, for whoever doubts it; null where no rule gave it. */
export function WhyDue({ due }: { due: Due }) {
  if (due.as === 'no-rule') return null;
  if (due.as === 'waits') return <span>{capital(ruleInWords(due.rule))}.</span>;
  if (due.rule === undefined) return <span>Set for this dispute.</span>;
  return (
    <span>
      {capital(ruleInWords(due.rule))}. {due.time && putOffInWords(due.rule, due.time)}{' '}
      {due.time && skippedInWords(due.time)}
    </span>
  );
}

const capital = (text: string) => text.charAt(0).toUpperCase() + text.slice(1);
