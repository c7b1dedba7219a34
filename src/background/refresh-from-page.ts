import { clearTabBadge, showTabBadge } from '../browser/badge.ts';
import { forgetPopupTask, preparedFor, preparePopup } from '../browser/popup.ts';
import { mayRead } from '../browser/site-permission.ts';
import { thisZone } from '../browser/this-zone.ts';
import type { DraftLots } from '../capture/draft/draft-lot.ts';
import type { LotFacts, LotId } from '../domain/lot/lot.ts';
import { siteOf } from '../domain/setup/site.ts';
import { wholeSetup } from '../domain/setup/starting-setup.ts';
import { instant } from '../domain/time/instant.ts';
import { DAY, MINUTE } from '../domain/time/units.ts';
import { hasBid, isOver } from '../folds/bid-given.ts';
import type { LotState } from '../folds/lot-state.ts';
import { isSameFact } from '../folds/same-fact.ts';
import { biddingOf } from '../journal/states/lot-bidding.ts';
import { readTab } from '../reading/read-tab.ts';
import { readingContext, siteOfUrl } from '../reading/reading-context.ts';
import { refreshPlan } from '../reading/refresh-plan.ts';
import { openThisStore } from '../store/open-this-store.ts';
import type { Store } from '../store/store.ts';
import { headroomBadge } from '../views/lots/headroom-badge.ts';
import { standingsUnder } from '../views/lots/standing.ts';
import { plannedBids } from '../views/plan/kept-plan.ts';
import type { Lookout } from './look-again.ts';

const RECENT_MS = 30 * DAY;
const MOST_RECENT = 2000;
/** A price that stands unchanged is written down again after this. */
const AGAIN_MS = 10 * MINUTE;

/** A page tells more than once that it was opened, mostly at once; it is read after the last of them. */
const SETTLED_MS = 100;

/** For each tab the last time that it told so. A reading begun before is of no account: the page under it may be gone. */
const lastOpened = new Map<number, symbol>();

/**
 * On a site that the user has allowed: reads the page he has just opened, and if it is a watched lot's, brings its price
 * now and its close up to date in one entry, and says so on the button. On any other page nothing runs.
 */
export async function refreshFromPage(tab: number, url: string, lookout: Lookout): Promise<void> {
  if (siteOfUrl(url) === '' || !(await mayRead(url))) return;
  const opening = Symbol(url);
  const isLast = () => lastOpened.get(tab) === opening;
  lastOpened.set(tab, opening);
  await new Promise((resolve) => setTimeout(resolve, SETTLED_MS));
  if (!isLast()) return;
  try {
    const opened = await openThisStore();
    // A store that can't be opened is said on the button already; the page can be read by hand.
    if (opened.ok) await refresh(opened.value, { tab, url, isLast }, lookout).finally(() => opened.value.close());
  } finally {
    if (isLast()) lastOpened.delete(tab);
  }
}

interface Visit {
  readonly tab: number;
  readonly url: string;
  /** False once the tab told again that its page was opened. */
  readonly isLast: () => boolean;
}

async function refresh(store: Store, { tab, url, isLast }: Visit, { lookAgain }: Lookout): Promise<void> {
  const [kept, made, recent] = await Promise.all([
    store.setup(),
    store.plan(),
    store.lotsByClose({ from: instant(Date.now() - RECENT_MS), limit: MOST_RECENT }),
  ]);
  const setup = wholeSetup(kept, thisZone());
  const planned = plannedBids(made?.plan);
  const site = siteOfUrl(url);
  const read = await readTab(tab, readingContext(site, setup, recent), 'steadily');
  // A page that was left again, or that the browser guards, is no news.
  if (!read.ok || !isLast()) return;
  const told = await preparedFor(tab);
  const { venueId } = siteOf(setup.sites, site);
  const known = { venues: setup.venues, titles: setup.titles, siteVenueId: venueId };
  const plan = refreshPlan(read.value, await perhapsWatched(store, recent, read.value), known);
  if (plan === null) {
    // A page that changes without being left is another lot's now, or none's.
    if (told.has('lot')) {
      await clearTabBadge(tab);
      await forgetPopupTask(tab);
    }
    return;
  }
  const { id } = plan.lot;
  const before = told.get('lot') === id ? told : new URLSearchParams({ lot: id });
  const wanted = Object.keys(plan.set).length > 0 && !(await wasTakenBack(store, id, before.get('entry'), plan.set));
  const { readAt } = read.value;
  const written = wanted ? await store.changeLot(id, { set: plan.set, evidence: plan.evidence, seenAt: readAt }) : null;
  // That our bid still stands is worth knowing to the minute; of other lots the price alone is.
  if (!wanted && plan.still !== undefined && wasLongAgo(plan.lot, readAt))
    await store.changeLot(id, { ...plan.still, seenAt: readAt });
  const entry = written?.ok === true ? written.value[0]?.id : undefined;
  // A page reports its opening more than once, with each address it gives itself. The badge keeps showing what changed.
  const news = new URLSearchParams(before);
  if (entry !== undefined) {
    news.set('entry', entry);
    news.set('was', JSON.stringify(plan.was));
  }
  news.delete('asked');
  if (plan.asked.length > 0) news.set('asked', JSON.stringify(plan.asked));
  const { text, title } = headroomBadge(standingsUnder(setup, planned).of((await store.lot(id)) ?? plan.lot));
  await preparePopup(tab, news.toString());
  await showTabBadge(tab, text, [title, ...newsInWords(news)].join('. '));
  if (entry !== undefined) await lookAgain();
}

/** Whether a bid of ours is in, and nobody has looked at its price for a while. */
function wasLongAgo(lot: LotState, now: number): boolean {
  const last = biddingOf(lot).prices.at(-1)?.seenAt;
  return hasBid(lot) && !isOver(lot, now) && last !== undefined && now - last > AGAIN_MS;
}

/** The lots that a page may be about: those with its VIN, and those that were watched lately. */
async function perhapsWatched(
  store: Store,
  recent: readonly LotState[],
  page: DraftLots,
): Promise<readonly LotState[]> {
  const vin = page.lots[0]?.fields.vin?.readings[0]?.value;
  const byVin = vin === undefined ? [] : await store.lotsByVin(vin);
  const known = new Set(byVin.map(({ id }) => id));
  return [...byVin, ...recent.filter(({ id }) => !known.has(id))];
}

function newsInWords(news: URLSearchParams): readonly string[] {
  return [
    ...(news.has('entry') ? ['Updated from this page'] : []),
    ...(news.has('asked') ? ['The page says something to check: press the button'] : []),
  ];
}

/** Whether the user has undone this very change since the page was opened. */
async function wasTakenBack(store: Store, lot: LotId, entry: string | null, set: LotFacts): Promise<boolean> {
  if (entry === null) return false;
  const item = (await store.historyOfLot(lot)).find(({ id }) => id === entry);
  if (item === undefined || item.counts || item.read.as !== 'known') return false;
  const { happening } = item.read.entry;
  return happening.kind === 'lot-changed' && isSameFact(happening.set, set);
}
