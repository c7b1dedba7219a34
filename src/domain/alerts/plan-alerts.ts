import type { AlertRules } from '../setup/alert-rules.ts';
import { type Instant, instant } from '../time/instant.ts';

/** What an alert needs to know of a lot. */
export interface AlertLot {
  readonly id: string;
  readonly close: Instant;
  /** The car, as a person calls it. */
  readonly name: string;
  /** The price at which to stop, in words; or that there is none. */
  readonly stop: string;
  /** The close on the store's clock. */
  readonly closeWords: string;
  readonly placed: boolean;
}

export interface Alert {
  /** Stable: showing it again replaces it. */
  readonly id: string;
  /** Everything this alert says; recorded once it was shown. */
  readonly keys: readonly string[];
  readonly title: string;
  readonly body: string;
  readonly loudness: 'loud' | 'quiet';
}

export interface AlertPlan {
  /** To be said now, the most urgent first. */
  readonly due: readonly Alert[];
  /** When to look again; null when nothing is ahead. */
  readonly next: Instant | null;
}

interface Call {
  readonly lot: AlertLot;
  readonly key: string;
  readonly dueAt: number;
}

const MINUTE = 60_000;
/** A call that comes this much after its time says so. */
const LATE = 2 * MINUTE;
/** More calls than this at once become one notice: a flood is read by nobody. */
const MOST_AT_ONCE = 3;
const NAMED = 6;

/**
 * The calls before each close. What is due is said now, however late; of several leads that have passed for one lot only
 * the last is said, and a close that passed without any call is said as missed. A key says lot, lead and close, so that
 * nothing is said twice, and a close that moves is called anew.
 */
export function planAlerts(input: {
  readonly lots: readonly AlertLot[];
  readonly rules: Pick<AlertRules, 'leadMinutes' | 'placedLeadMinutes'>;
  readonly shownKeys: ReadonlySet<string>;
  readonly now: Instant;
}): AlertPlan {
  const { lots, rules, shownKeys, now } = input;
  const due: Call[] = [];
  const passed: string[] = [];
  let next = Number.POSITIVE_INFINITY;
  for (const lot of lots) {
    const leads = lot.placed ? rules.placedLeadMinutes : rules.leadMinutes;
    const calls = leads.map(
      (lead): Call => ({ lot, key: `${lot.id} ${lead} ${lot.close}`, dueAt: lot.close - lead * MINUTE }),
    );
    const ready = calls.filter((call) => call.dueAt <= now);
    for (const call of calls) if (call.dueAt > now) next = Math.min(next, call.dueAt);
    const last = ready.at(-1);
    if (last === undefined || shownKeys.has(last.key)) continue;
    due.push(last);
    for (const call of ready) if (call !== last && !shownKeys.has(call.key)) passed.push(call.key);
  }
  const alerts = due.length > MOST_AT_ONCE ? [together(due, now)] : due.map((call) => alone(call, now));
  const [first, ...others] = [...alerts].sort((a, b) =>
    a.loudness === b.loudness ? 0 : a.loudness === 'loud' ? -1 : 1,
  );
  return {
    // Calls that a later one made needless are recorded with it.
    due: first === undefined ? [] : [{ ...first, keys: [...first.keys, ...passed] }, ...others],
    next: Number.isFinite(next) ? instant(next) : null,
  };
}

function alone({ lot, key, dueAt }: Call, now: Instant): Alert {
  const left = lot.close - now;
  const late = now - dueAt > LATE ? `Late by ${minutes(now - dueAt)}: ` : '';
  const title =
    left > 0 ? `${late}${lot.name} closes in ${minutes(left)}` : `${late}${lot.name} closed ${minutes(-left)} ago`;
  const body =
    left > 0
      ? `${lot.stop} Closes ${lot.closeWords}. ${lot.placed ? 'A proxy is placed.' : 'No proxy is placed yet.'}`
      : `Nobody was told in time. ${lot.stop} Look up how it ended.`;
  return { id: `close ${lot.id}`, keys: [key], title, body, loudness: lot.placed ? 'quiet' : 'loud' };
}

function together(calls: readonly Call[], now: Instant): Alert {
  const soonest = [...calls].sort((a, b) => a.lot.close - b.lot.close);
  const open = soonest.filter(({ lot }) => lot.close > now);
  const bare = open.filter(({ lot }) => !lot.placed).length;
  const closed = soonest.length - open.length;
  const title = [
    open.length > 0 && `${open.length} lots close soon, ${bare} without a proxy`,
    closed > 0 && `${closed} closed without a call in time`,
  ]
    .filter(Boolean)
    .join('; ');
  const named = [...open, ...soonest.filter(({ lot }) => lot.close <= now)].slice(0, NAMED);
  const rest = soonest.length - named.length;
  const body = [
    ...named.map(({ lot }) => `${lot.closeWords} ${lot.name}`),
    ...(rest > 0 ? [`and ${rest} more`] : []),
  ].join('\n');
  return { id: 'closings', keys: soonest.map(({ key }) => key), title, body, loudness: bare > 0 ? 'loud' : 'quiet' };
}

function minutes(ms: number): string {
  const whole = Math.max(1, Math.round(ms / MINUTE));
  if (whole < 60) return `${whole} min`;
  const hours = Math.floor(whole / 60);
  return whole % 60 === 0 ? `${hours} h` : `${hours} h ${whole % 60} min`;
}
