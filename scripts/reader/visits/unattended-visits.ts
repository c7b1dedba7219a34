/** Many visits to invented sites that the user has allowed, and whether what was written by itself was ever another lot's. */
import { JSDOM } from 'jsdom';
import { type LotFacts, lotIdSchema } from '../../../src/domain/lot/lot.ts';
import { cents } from '../../../src/domain/money/cents.ts';
import { instant } from '../../../src/domain/time/instant.ts';
import { DAY } from '../../../src/domain/time/units.ts';
import { zone } from '../../../src/domain/time/zone.ts';
import type { LotState } from '../../../src/folds/lot-state.ts';
import { entryIdSchema } from '../../../src/journal/ids.ts';
import { refreshPlan } from '../../../src/reading/refresh-plan.ts';
import { Dice } from '../dice.ts';
import { type SiteLot, siteLots } from './invented-site.ts';
import { Visit } from './invented-visit.ts';
import { TurnedClock } from './turned-clock.ts';

const START = Date.UTC(2026, 10, 27, 15);
/** Each window keeps what was in it before, and gets slower by it. */
const VISITS_A_WINDOW = 8;

export interface VisitSums {
  readings: number;
  written: number;
  asked: number;
  /** What was written of a lot although the sale never said so of it. */
  readonly wrong: string[];
}

/**
 * @param count how many visits; each is the same every time, by its number
 * @param first the number of the first of them
 */
export async function unattendedVisits(count: number, first = 1): Promise<VisitSums> {
  const sums: VisitSums = { readings: 0, written: 0, asked: 0, wrong: [] };
  let page = windowWithoutStyles();
  for (let number = first; number < first + count; number++) {
    if (number % VISITS_A_WINDOW === 0) page = windowWithoutStyles();
    await oneVisit(number, page, sums);
  }
  return sums;
}

/** Asking for styles is most of what a reading costs here, and these pages have none. */
function windowWithoutStyles(): JSDOM {
  const page = new JSDOM('<body></body>', { url: 'https://sale.example/' });
  const plain = page.window.getComputedStyle(page.window.document.body);
  Object.defineProperty(page.window, 'getComputedStyle', { value: () => plain });
  return page;
}

async function oneVisit(number: number, page: JSDOM, sums: VisitSums): Promise<void> {
  const dice = new Dice(number);
  const clock = new TurnedClock(START + dice.whole(0, 86_400) * 1000);
  const site = siteLots(dice, clock.now);
  const watched = site.map((lot, at) => watchedLot(lot, at, dice));
  const visit = new Visit(page, { clock, dice, site }, (draft) => {
    sums.readings++;
    const plan = refreshPlan(draft, watched, { venues: [], titles: [] });
    if (plan === null) return;
    sums.asked += plan.asked.length;
    sums.written += Object.keys(plan.set).length;
    const lot = site.find(({ vin }) => vin === plan.lot.facts.vin);
    if (!isOf(lot, plan.set)) sums.wrong.push(`visit ${number}: ${JSON.stringify(plan.set)} of ${plan.lot.facts.vin}`);
    watched[watched.indexOf(plan.lot)] = { ...plan.lot, facts: { ...plan.lot.facts, ...plan.set } };
  });
  await visit.run();
}

/** Whether what is to be written is something that the sale said of this very lot. */
function isOf(lot: SiteLot | undefined, { priceNow, close }: LotFacts): boolean {
  return (
    lot !== undefined &&
    (priceNow === undefined || lot.prices.has(priceNow / 100)) &&
    (close === undefined || lot.closings.has(close.instant))
  );
}

/** The lot as it was saved some bids ago; of some the close is not known. */
function watchedLot({ vin, price, closes, number, name }: SiteLot, at: number, dice: Dice): LotState {
  const close = {
    instant: instant(closes - dice.whole(0, 3) * 600_000),
    text: 'as saved',
    zone: zone('America/Boise'),
    how: 'stated-zone' as const,
    doubts: [],
    otherwise: [],
  };
  const facts: LotFacts = {
    vin,
    make: name.split(' ')[1] ?? '',
    ...(dice.happens(0.8) ? { priceNow: cents(Math.max(50, price - dice.whole(0, 20) * 50) * 100) } : {}),
    ...(dice.happens(0.5) ? { lotNumber: number } : {}),
    ...(dice.happens(0.5) ? { close } : {}),
  };
  const when = instant(START - DAY);
  const name26 = `01ARZ3NDEKTSV4RRFFQ69G5FA${at}`;
  return {
    id: lotIdSchema.parse(name26),
    facts,
    evidence: {},
    source: 'page',
    addedAt: when,
    changedAt: when,
    dropped: false,
    bornIn: entryIdSchema.parse(name26),
  };
}
