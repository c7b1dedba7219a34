import { attempt, attemptEach } from '../attempt.ts';
import type { DutySpan } from '../rush/duty.ts';
import type { RushBand, RushCalendar, RushStanding } from '../rush/rush-bands.ts';
import type { AlertRules } from '../setup/alert-rules.ts';
import { addDays } from '../time/calendar-day.ts';
import type { Instant } from '../time/instant.ts';
import type { LocalDate } from '../time/local-date.ts';
import { resolveWallTime } from '../time/resolve-wall-time.ts';
import { MINUTE } from '../time/units.ts';
import { dateIn } from '../time/wall-clock.ts';
import type { Zone } from '../time/zone.ts';
import { type AlertLot, closesBy, readingsOf } from './alert-lot.ts';

/** The reminders about many lots at once: the evening before a busy day, and before the busy hours begin. */
export interface RoundUp {
  readonly kind: 'digest' | 'rush';
  readonly key: string;
  /** Milliseconds since 1970. */
  readonly dueAt: number;
  /** From then on it says nothing that the calls of the lots don't say. */
  readonly staleAt: number;
  readonly date: LocalDate;
  /** The first band it is about. */
  readonly band: RushBand;
  /** Who is on duty when: in these busy hours; for the list of the evening before, in all of that day. */
  readonly duty: readonly DutySpan[];
  /** All that close that day, the soonest first. */
  readonly ofDay: readonly AlertLot[];
  /** Those in the busy hours or near them. */
  readonly around: readonly AlertLot[];
  /** How many of `around` are in them. */
  readonly inside: number;
}

export interface RushRules {
  readonly rules: Pick<AlertRules, 'digestAt' | 'beforeRushMinutes'>;
  readonly calendar: RushCalendar;
  readonly zone: Zone;
}

/** Every round-up for these lots, worked out from the busy hours and the zone as they are now. */
export function roundUps(lots: readonly AlertLot[], { rules, calendar, zone }: RushRules): RoundUp[] {
  if (rules.digestAt === null && rules.beforeRushMinutes === null) return [];
  const days = new Map<LocalDate, PlacedLot[]>();
  const live = lots.filter((lot) => !lot.ended && lot.done !== true && lot.since < closesBy(lot));
  // A lot that closes on no day of any calendar keeps its own calls, and costs no list of the others.
  const { done } = attemptEach(live, (lot) => {
    // While its close is in doubt it stands in the list of every day that this can mean, once in each.
    const byDay = new Map(
      readingsOf(lot)
        .toReversed()
        .map((close) => [dateIn(zone, close), close]),
    );
    return [...byDay].map(([date, close]) => ({ date, placed: { lot, close, rush: calendar.of(close) } }));
  });
  for (const { date, placed } of done.flat()) {
    const ofDay = days.get(date);
    if (ofDay === undefined) days.set(date, [placed]);
    else ofDay.push(placed);
  }
  return [...days].flatMap(([date, ofDay]) => {
    const placed = ofDay.toSorted((a, b) => a.close - b.close);
    const reminders = remindersOf(date, placed, rules);
    const duty = attempt(() => calendar.bandsOn(date).flatMap((band) => band.duty));
    const digest = digestOf(date, placed, { reminders, duty: duty.ok ? duty.value : [] }, rules, zone);
    return digest === null ? reminders : [digest, ...reminders];
  });
}

/** A lot, and how its close stands to the busy hours. */
interface PlacedLot {
  readonly lot: AlertLot;
  /** The close, or the first of its readings that day. */
  readonly close: Instant;
  readonly rush: RushStanding;
}

/** @param ofDay the soonest first */
function remindersOf(
  date: LocalDate,
  ofDay: readonly PlacedLot[],
  { beforeRushMinutes }: RushRules['rules'],
): RoundUp[] {
  if (beforeRushMinutes === null) return [];
  const dueAt = (band: RushBand) => band.from - beforeRushMinutes * MINUTE;
  const byBand = new Map<RushBand, PlacedLot[]>();
  for (const placed of ofDay) {
    const { band } = placed.rush;
    // What closes near the rush may have closed before the reminder comes.
    if (band === undefined || placed.close <= dueAt(band)) continue;
    const known = byBand.get(band);
    if (known === undefined) byBand.set(band, [placed]);
    else known.push(placed);
  }
  return [...byBand].map(([band, around]) => ({
    kind: 'rush',
    key: `rush ${band.from}`,
    dueAt: dueAt(band),
    staleAt: lastClose(around),
    duty: band.duty,
    ...listed(date, band, ofDay, around),
  }));
}

function digestOf(
  date: LocalDate,
  ofDay: readonly PlacedLot[],
  { reminders, duty }: { readonly reminders: readonly RoundUp[]; readonly duty: readonly DutySpan[] },
  { digestAt }: RushRules['rules'],
  zone: Zone,
): RoundUp | null {
  const around = ofDay.filter(({ rush }) => rush.kind !== 'clear');
  const band = around[0]?.rush.band;
  if (digestAt === null || band === undefined) return null;
  const dueAt = resolveWallTime({ date: addDays(date, -1), time: digestAt }, zone).earliest;
  // Once a reminder before the rush has followed, it says the same and better.
  const followers = reminders.map((reminder) => reminder.dueAt).filter((at) => at > dueAt);
  return {
    kind: 'digest',
    key: `digest ${date}`,
    dueAt,
    staleAt: Math.min(lastClose(around), ...followers),
    duty,
    ...listed(date, band, ofDay, around),
  };
}

const listed = (date: LocalDate, band: RushBand, ofDay: readonly PlacedLot[], around: readonly PlacedLot[]) => ({
  date,
  band,
  ofDay: ofDay.map(({ lot }) => lot),
  around: around.map(({ lot }) => lot),
  inside: around.filter(({ rush }) => rush.kind === 'in').length,
});

const lastClose = (lots: readonly PlacedLot[]): number => lots.at(-1)?.close ?? Number.NEGATIVE_INFINITY;
