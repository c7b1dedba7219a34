import { cancelWake, wakeAt } from '../browser/alarms.ts';
import { showBadge } from '../browser/badge.ts';
import { showNotice } from '../browser/notifications.ts';
import { planAlerts } from '../domain/alerts/plan-alerts.ts';
import { startingSetup } from '../domain/setup/starting-setup.ts';
import { type Instant, instant } from '../domain/time/instant.ts';
import type { Store } from '../store/store.ts';
import { openThisStore } from '../ui/open-this-store.ts';
import { thisZone } from '../ui/this-zone.ts';
import { alertLots } from './alert-lots.ts';

const HOUR = 3_600_000;
const DAY = 24 * HOUR;
/** What came due longer ago than this is history: the list of closed lots says it better than a notice. */
const LOOK_BACK = 2 * DAY;
const LOOK_AHEAD = 8 * DAY;
const NEXT = 'next-alert';

let queue: Promise<unknown> = Promise.resolve();

/**
 * Works the alerts out from the store as it is now, says what is due, and asks to be woken for the next. Safe to call at
 * any time and any number of times: what was shown is recorded after it was shown, and a notice shown again replaces itself.
 * @returns how many alerts were said
 */
export function lookAgain(): Promise<number> {
  const mine = queue.then(look);
  queue = mine.catch((error: unknown) => reportError(error));
  return mine;
}

async function look(): Promise<number> {
  const opened = await openThisStore();
  if (!opened.ok) {
    await showBadge('!', `Headroom can’t read its lots: ${opened.message}`);
    // Another tab may hold the store for a moment; a closing must not be missed because of it.
    const now = instant(Date.now());
    await wakeAt(NEXT, instant(now + 60_000), now);
    return 0;
  }
  const store = opened.value;
  try {
    return await sayWhatIsDue(store, instant(Date.now()));
  } finally {
    store.close();
  }
}

async function sayWhatIsDue(store: Store, now: Instant): Promise<number> {
  const [kept, shown, lots] = await Promise.all([
    store.setup(),
    store.shownAlerts(),
    store.lotsByClose({ from: instant(now - LOOK_BACK), before: instant(now + LOOK_AHEAD) }),
  ]);
  const setup = { ...startingSetup(thisZone()), ...kept };
  const plan = planAlerts({ lots: alertLots(lots, setup), rules: setup.alerts, shownKeys: shown, now });
  for (const alert of plan.due) {
    await showNotice({ id: alert.id, title: alert.title, body: alert.body, stays: alert.loudness === 'loud' });
    const recorded = await store.recordShown(alert.keys);
    if (!recorded.ok) throw new Error(recorded.message);
  }
  if (plan.next === null) await cancelWake(NEXT);
  else await wakeAt(NEXT, plan.next, now);
  const soon = lots.filter(({ facts }) => isOpenSoon(facts.close?.instant, now) && facts.proxy === undefined).length;
  await showBadge(soon === 0 ? '' : String(soon), badgeTitle(soon));
  return plan.due.length;
}

const isOpenSoon = (close: number | undefined, now: number) => close !== undefined && close > now && close <= now + DAY;

const badgeTitle = (soon: number) =>
  soon === 0
    ? 'Headroom'
    : `Headroom: ${soon} ${soon === 1 ? 'lot closes' : 'lots close'} within a day without a proxy`;
