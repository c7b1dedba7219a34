import { type AlertLot, readingsOf } from '../alerts/alert-lot.ts';
import { callsOfLot } from '../alerts/lot-calls.ts';
import { tellApart } from '../close/say-close.ts';
import { lotTitle } from '../lot/car-name.ts';
import type { LotFacts, LotId } from '../lot/lot.ts';
import type { Ending } from '../sale/result.ts';
import type { AlertRules } from '../setup/alert-rules.ts';
import type { Store } from '../setup/store.ts';
import { type Instant, instant } from '../time/instant.ts';
import { sayDuration } from '../time/say-duration.ts';
import { sayTime } from '../time/say-time.ts';
import type { CalendarEvent } from './calendar-event.ts';

/** What a calendar is told of one lot. */
export interface ClosingToTell {
  readonly id: LotId;
  readonly facts: LotFacts;
  /** When it closes; for a lot whose close was taken away, when it last did. */
  readonly at: Instant;
  /** "Stop at $14,350", or why there is no such figure. */
  readonly stop: string;
  /** The lot as its alerts see it; null when it has none. */
  readonly watched: AlertLot | null;
  /** Why it no longer closes then, or how it ended; absent while it is open. */
  readonly over?: 'dropped' | 'no-close' | 'import-undone' | Ending | undefined;
  /** How often the journal was written in about it, and when last. */
  readonly revision: { readonly count: number; readonly at: Instant };
}

const CANCELLED = {
  dropped: 'Removed from the list',
  'no-close': 'Close not known',
  'import-undone': 'Import undone',
  withdrawn: 'Withdrawn',
} as const;
const ENDED = {
  won: 'Won',
  lost: 'Lost',
  'not-sold': 'Not sold',
  pending: 'Pending seller approval',
  'not-watched': 'Closed, nobody watched',
} as const;

/**
 * A closing as an event: the price at which to stop comes first, because a telephone shows the beginning. Its alarms are
 * Headroom's last call before the close. The question afterwards is left out: a calendar can't know that it was answered.
 */
export function closingEvent(
  closing: ClosingToTell,
  store: Store,
  rules: Pick<AlertRules, 'leadMinutes' | 'placedLeadMinutes' | 'afterCloseMinutes'>,
): CalendarEvent {
  const { facts, at, stop, watched, over, revision } = closing;
  const car = lotTitle(facts);
  const bid = over === undefined ? watched?.bid.words : undefined;
  const status = over !== undefined && over in CANCELLED ? 'CANCELLED' : doubtful(facts) ? 'TENTATIVE' : 'CONFIRMED';
  const calls = watched === null ? [] : lastCalls(watched, rules);
  const holder = watched?.handedTo === undefined ? '' : ` ${watched.handedTo} has it.`;
  return {
    uid: `headroom-lot-${closing.id}`,
    sequence: revision.count,
    revisedAt: revision.at,
    at,
    summary: `${over === undefined ? stop : { ...CANCELLED, ...ENDED }[over]} · ${car}`,
    description: [
      car,
      `${over === undefined ? 'Closes' : 'Close:'} ${sayTime(at, store.zone)} (${store.zone})${
        doubtful(facts) ? `; this time is in doubt, check it with the venue${otherWords(watched, at, store)}` : ''
      }`,
      stop !== '' && [`${stop}.`, bid].filter(Boolean).join(' ') + holder,
      facts.lotNumber && `Lot ${facts.lotNumber}`,
      facts.vin && `VIN ${facts.vin}`,
      `As of ${sayTime(revision.at, store.zone)}. Later changes are in Headroom, not here.`,
    ]
      .filter(Boolean)
      .join('\n'),
    location: facts.venueName ?? facts.venueId,
    url: facts.pageUrl,
    status,
    alarms: calls.map(({ dueAt, close }) => ({
      at: instant(Math.max(0, dueAt)),
      words: `${car} ${isSure(watched) ? 'closes' : 'may close'} in ${sayDuration(close - dueAt)}. ${stop}. ${bid ?? ''}${holder} ${[facts.venueName ?? facts.venueId, facts.lotNumber && `lot ${facts.lotNumber}`].filter(Boolean).join(', ')}; closes ${sayTime(close, store.zone)}. As of ${sayTime(revision.at, store.zone)}.`,
    })),
  };
}

/** A telephone rings once for a lot: when it is high time. Also for a bid that can be passed, since nobody will see that here. */
function lastCalls(lot: AlertLot, rules: Pick<AlertRules, 'leadMinutes' | 'placedLeadMinutes' | 'afterCloseMinutes'>) {
  const lead = rules.leadMinutes.at(-1);
  const watched = { ...rules, placedLeadMinutes: lot.bid.raisable === true && lead !== undefined ? [lead] : [] };
  return callsOfLot(lot, watched, { of: () => ({ kind: 'clear' }) }).filter(({ last }) => last);
}

const isSure = (watched: AlertLot | null): boolean => watched === null || readingsOf(watched).length === 1;

/** "; it can also mean Fri Dec 11, 12:00 PM". */
function otherWords(watched: AlertLot | null, at: Instant, { zone }: Store): string {
  const others = watched === null ? [] : readingsOf(watched).filter((reading) => reading !== at);
  return others.length === 0 ? '' : `; it can also mean ${tellApart(others, zone).join(' or ')}`;
}

const doubtful = ({ close }: LotFacts) => close !== undefined && close.doubts.length > 0;
