import type { Alert } from '../domain/alerts/alert.ts';
import { offerWords } from '../domain/alerts/offer.ts';
import { planAlerts } from '../domain/alerts/plan-alerts.ts';
import { rushCalendar } from '../domain/rush/rush-bands.ts';
import { wholeSetup } from '../domain/setup/starting-setup.ts';
import { type Instant, instant } from '../domain/time/instant.ts';
import { DAY } from '../domain/time/units.ts';
import type { Store } from '../store/store.ts';
import { alertLots } from '../views/lots/alert-lots.ts';
import { standingsUnder } from '../views/lots/standing.ts';
import { peopleHandedTo } from '../views/people.ts';
import { badgeFor } from './badge-for.ts';
import { deadlinesOf } from './deadlines.ts';
import { noticeId, readNoticeId } from './notice-id.ts';
import type { World } from './world.ts';
import { honestlyShown } from './wrong-clock.ts';

/** What closed longer ago is history: the list of closings without a result says it better than a notice. */
const LOOK_BACK = 14 * DAY;
const LOOK_AHEAD = 9 * DAY;

/**
 * One look: plans from the store as it is, has itself woken for the next call, says what is due with the greatest need
 * first, and records each as shown after it was. Where notices are turned off nothing counts as shown; the badge has it.
 * @param wakeFor asked before anything is said, so that a worker that dies while speaking is still woken
 * @returns how many alerts were said
 */
export async function sayWhatIsDue(
  store: Store,
  world: World,
  wakeFor: (next: Instant | null) => Promise<void>,
): Promise<number> {
  const now = world.now();
  const [kept, recorded, lots] = await Promise.all([
    store.setup(),
    store.shownAlerts(),
    store.lotsByClose({ from: instant(Math.max(0, now - LOOK_BACK)), before: instant(now + LOOK_AHEAD) }),
  ]);
  const setup = wholeSetup(kept, world.zone());
  const shownKeys = await honestlyShown(store, recorded, now);
  const closing = alertLots(lots, standingsUnder(setup).of);
  const plan = planAlerts({
    lots: closing,
    deadlines: await deadlinesOf({ store, setup, now }),
    rules: setup.alerts,
    calendar: rushCalendar(setup.rush, setup.store.zone, setup.alerts.nearMinutes),
    zone: setup.store.zone,
    people: peopleHandedTo(lots),
    shownKeys,
    now,
  });
  await wakeFor(plan.next);
  const allowed = await world.noticesAllowed();
  await world.showBadge(badgeFor({ lots: closing, due: plan.due, allowed, now }));
  const settled = closing.filter((lot) => lot.ended || lot.done === true).map(({ id }) => id);
  await clearNotices(world, (about) => settled.some((id) => about === `lot-${id}`));
  if (!allowed) return 0;
  // The greatest need is said last: screens put the latest notice on top.
  for (const alert of plan.due.toReversed()) {
    await say(world, alert);
    const written = await store.recordShown(alert.keys);
    if (!written.ok) throw new Error(written.message);
  }
  return plan.due.length;
}

async function say(world: World, alert: Alert): Promise<void> {
  const id = noticeId(alert);
  await clearNotices(world, (about, other) => about === alert.about && other !== id);
  await world.showNotice({
    id,
    title: alert.title,
    body: alert.body,
    loudness: alert.loudness,
    buttons: alert.offers.map(offerWords),
  });
}

/** Takes notices off the screen by what they are about. */
export async function clearNotices(world: World, which: (about: string, id: string) => boolean): Promise<void> {
  for (const id of await world.noticeIds()) if (which(readNoticeId(id).about, id)) await world.clearNotice(id);
}
