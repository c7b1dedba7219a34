import { CROWDED_MINUTES, GATHERED_MINUTES } from '../../src/domain/alerts/gather.ts';
import type { LotFacts } from '../../src/domain/lot/lot.ts';
import { cents } from '../../src/domain/money/cents.ts';
import { estimateSchema } from '../../src/domain/money/estimate.ts';
import { alertRulesSchema } from '../../src/domain/setup/alert-rules.ts';
import { rushSchema, storeSchema } from '../../src/domain/setup/store.ts';
import { venueSchema } from '../../src/domain/setup/venue.ts';
import type { CloseTime } from '../../src/domain/time/close-time.ts';
import { instant } from '../../src/domain/time/instant.ts';
import type { LocalDate, LocalTime } from '../../src/domain/time/local-date.ts';
import { resolveWallTime } from '../../src/domain/time/resolve-wall-time.ts';
import { MINUTE } from '../../src/domain/time/units.ts';
import { wallClock } from '../../src/domain/time/wall-clock.ts';
import { zone } from '../../src/domain/time/zone.ts';
import { value } from '../store/open-test-store.ts';
import type { InventedBrowser, Said } from './invented-browser.ts';

export const BOISE = zone('America/Boise');
export const VENUE = 'saguaro';
/** Where the bids are in that need no look: without fees or freight, so that a max bid follows from the retail alone. */
export const YARD = venueSchema.parse({
  id: VENUE,
  name: 'Saguaro Sale Yard',
  zone: 'America/Phoenix',
  feeScheduleIds: [],
  increments: [{ fromCents: 0, stepCents: 10_000 }],
  noBuyFees: true,
  transport: { kind: 'flat', cents: 0 },
  noTransport: true,
});

/** A moment by the invented store's clock. */
export const at = (date: string, time: string): number =>
  resolveWallTime({ date: date as LocalDate, time: time as LocalTime }, BOISE).earliest;

/** A longer ladder than the one that Headroom begins with, so that there is more to go wrong. */
export const RULES = alertRulesSchema.parse({ leadMinutes: [60, 15, 5], placedLeadMinutes: [5] });

/** When the invented store is busy. */
const BUSY = [
  { weekday: 'sat', from: '10:00', to: '13:00' },
  { weekday: 'sun', from: '01:00', to: '04:00' },
] as const;

export const closeAt = (moment: number): CloseTime => ({
  instant: instant(moment),
  text: 'as the sale says it',
  zone: BOISE,
  how: 'stated-zone',
  doubts: [],
  otherwise: [],
});

/** The setup of the invented store: busy on Saturday from ten to one, and on Sunday too, in the night the clocks change. */
export async function setUp(browser: InventedBrowser, lots: readonly LotFacts[]): Promise<readonly string[]> {
  const store = await browser.store();
  value(
    await store.saveSetup({
      store: storeSchema.parse({ name: 'Cottonwood Truck & Van', zone: BOISE }),
      rush: rushSchema.parse({
        weekly: BUSY,
      }),
      alerts: RULES,
      venues: [YARD],
    }),
  );
  const added = value(
    await store.addLots(
      'typed',
      lots.map((facts) => ({ facts })),
    ),
  );
  store.close();
  return added.lots;
}

/** Lots that close at these moments; every third has its proxy placed, far below what it is worth. */
export const lotsClosing = (moments: readonly number[]): LotFacts[] =>
  moments.map((moment, i) => ({
    model: `Hauler ${i}`,
    close: closeAt(moment),
    ...(i % 3 === 2 && { proxy: cents(900_000), venueId: VENUE, retail: estimateSchema.parse({ likely: 3_000_000 }) }),
  }));

/** A call that had to be made: its key, when it was due by the true clock, and which later ones make it needless. */
export interface Wanted {
  readonly key: string;
  readonly dueAt: number;
  readonly orElse: readonly string[];
}

/** Every call for these lots, straight from the rules and the closes, without the planner. */
export function wantedFor(lots: readonly LotFacts[], ids: readonly string[], rounds: readonly Wanted[]): Wanted[] {
  const calls = lots.flatMap((lot, i) => {
    const close = lot.close?.instant ?? 0;
    const leads = lot.proxy === undefined ? RULES.leadMinutes : RULES.placedLeadMinutes;
    const all = [
      ...leads.map((lead) => ({ key: `${ids[i]} ${lead} ${close}`, dueAt: close - lead * MINUTE })),
      { key: `${ids[i]} after ${close}`, dueAt: whenCalm(close + (RULES.afterCloseMinutes ?? 0) * MINUTE) },
    ];
    return all.map((call, k) => ({ ...call, orElse: all.slice(k + 1).map(({ key }) => key) }));
  });
  return [...calls, ...rounds];
}

/** In the busy hours nobody is asked how a lot ended. */
function whenCalm(moment: number): number {
  const { date, weekday, time } = wallClock(instant(moment), BOISE);
  const busy = BUSY.find((hours) => hours.weekday === weekday && time >= hours.from && time < hours.to);
  return busy === undefined ? moment : resolveWallTime({ date, time: busy.to as LocalTime }, BOISE).latest;
}

export interface Tally {
  readonly due: number;
  readonly inTime: number;
  readonly late: number;
  readonly doubled: number;
  readonly missed: readonly string[];
  /** Said late without saying so. */
  readonly unlabelled: readonly string[];
}

/** What follows soon is said along with what is due, and a crowd begins so much earlier. */
const EARLY = (GATHERED_MINUTES + CROWDED_MINUTES + 1) * MINUTE;
const LATE = 3 * MINUTE;

/** What became of every call that was wanted. What was said far too early, by a wrong clock, does not count as said. */
export function tally(wanted: readonly Wanted[], said: readonly Said[]): Tally {
  const sayings = new Map<string, Said[]>();
  for (const one of said) for (const key of one.keys) sayings.set(key, [...(sayings.get(key) ?? []), one]);
  const missed: string[] = [];
  const unlabelled: string[] = [];
  let [inTime, late, doubled] = [0, 0, 0];
  for (const { key, dueAt, orElse } of wanted) {
    const good = [key, ...orElse]
      .flatMap((one) => sayings.get(one) ?? [])
      .filter((one) => one.at >= dueAt - EARLY)
      .sort((a, b) => a.at - b.at);
    const first = good[0];
    doubled += Math.max(0, (sayings.get(key)?.length ?? 0) - 1);
    if (first === undefined) missed.push(key);
    else if (first.at <= dueAt + LATE) inTime += 1;
    else {
      late += 1;
      if (first.keys.includes(key) && !/Late by/.test(first.title)) unlabelled.push(first.title);
    }
  }
  return { due: wanted.length, inTime, late, doubled, missed, unlabelled };
}
