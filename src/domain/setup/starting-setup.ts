import { NEW_BOOKKEEPING } from '../accounts/accounts.ts';
import { cents } from '../money/cents.ts';
import { ppm } from '../money/rate.ts';
import type { LocalTime } from '../time/local-date.ts';
import type { Zone } from '../time/zone.ts';
import { type Setup, setupSectionsSchema } from './setup.ts';
import { STARTING_TITLES } from './starting-titles.ts';

/**
 * What the tool works with until the user says otherwise: no venue and no fee, because those are his; plain assumptions
 * for the rest, each of which Setup shows and lets him change.
 * @param zone the zone this computer is set to, taken as the store's
 */
export function startingSetup(zone: Zone): Setup {
  if (made?.store.zone !== zone) made = fresh(zone);
  return made;
}

/** The one made last: it is asked for at every look at the alerts, and the zone hardly ever changes. */
let made: Setup | undefined;

function fresh(zone: Zone): Setup {
  return setupSectionsSchema.parse({
    store: { name: '', zone },
    venues: [],
    feeSchedules: [],
    titles: STARTING_TITLES,
    rules: { dollarsCents: cents(150_000), lossChancePpm: ppm(250_000) },
    costs: {},
    undone: {},
    carrying: { cashAnnualRatePpm: ppm(100_000), daysToSell: { kind: 'median', days: 40 } },
    rush: { weekly: [{ weekday: 'sat', from: '10:00' as LocalTime, to: '17:00' as LocalTime }] },
    alerts: {},
  });
}

/** The sections that were ever saved, and the starting ones for the rest. */
export function wholeSetup(kept: Partial<Setup> | null, zone: Zone): Setup {
  return { ...startingSetup(zone), ...(kept ?? { books: NEW_BOOKKEEPING }) };
}
