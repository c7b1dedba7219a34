import { showTabBadge } from '../browser/badge.ts';
import type { SeenBefore } from '../capture/draft/seen-before.ts';
import type { Evidence } from '../domain/lot/evidence.ts';
import type { LotFacts, LotId } from '../domain/lot/lot.ts';
import { type Outcome, ok, refuse } from '../domain/outcome.ts';
import { type Comp, compsSchema } from '../domain/retail/comp.ts';
import { withComps } from '../domain/retail/with-comps.ts';
import type { Setup } from '../domain/setup/setup.ts';
import { type PointedPlace, siteOf, withPlace, withSite } from '../domain/setup/site.ts';
import { type Instant, instant } from '../domain/time/instant.ts';
import type { LotState } from '../folds/lot-state.ts';
import type { Entry } from '../journal/entry.ts';
import type { EntryId } from '../journal/ids.ts';
import type { Store } from '../store/store.ts';
import type { LotToAdd } from '../store/write/add-lots.ts';
import { headroomBadge } from '../views/lots/headroom-badge.ts';
import type { PlannedBids } from '../views/lots/planned-bids.ts';
import { standingsUnder } from '../views/lots/standing.ts';
import { lookUpSeen } from './look-up-seen.ts';

/** As many as anybody looks through in a list to choose from. */
const MOST_OFFERED = 200;

/** A lot that was kept, as it stands now, and how to take that back. */
export interface KeptLot {
  readonly lot: LotState;
  readonly undo: () => Promise<Outcome<unknown>>;
}

/** What can be done with what was read of one page. */
export interface PageDesk {
  readonly setup: Setup;
  /** Host name of the page's site. */
  readonly site: string;
  readonly venueOfSite: string | undefined;
  readonly seen: (facts: LotFacts, readAt: Instant) => Promise<SeenBefore>;
  /** The same for one lot of many: no one lot of a list stands for its page on the button. */
  readonly seenQuietly: (facts: LotFacts, readAt: Instant) => Promise<SeenBefore>;
  readonly watch: (lot: LotToAdd) => Promise<Outcome<KeptLot>>;
  /** Brings several in at once; the value takes them back. */
  readonly watchAll: (lots: readonly LotToAdd[]) => Promise<Outcome<() => Promise<Outcome<unknown>>>>;
  readonly update: (
    id: LotId,
    set: LotFacts,
    evidence: Readonly<Record<string, Evidence>>,
  ) => Promise<Outcome<KeptLot>>;
  /** The watched lots that have not closed, the next to close first. */
  readonly openLots: () => Promise<readonly LotState[]>;
  readonly addComps: (id: LotId, comps: readonly Comp[]) => Promise<Outcome<KeptLot>>;
  /** The value takes it back. */
  readonly rememberVenue: (venueId: string) => Promise<Outcome<() => Promise<Outcome<unknown>>>>;
  /** Says on the toolbar button how much room the lot of this tab has left. */
  readonly badge: (lot: LotState) => Promise<void>;
}

export interface DeskParts {
  readonly store: Store;
  readonly setup: Setup;
  /** What the plan bids. */
  readonly planned: PlannedBids;
  readonly recent: () => Promise<readonly LotState[]>;
  readonly tab: number;
  readonly site: string;
}

export function pageDesk({ store, setup, planned, recent, tab, site }: DeskParts): PageDesk {
  const standings = standingsUnder(setup, planned);
  const badge = async (lot: LotState) => {
    const { text, title } = headroomBadge(standings.of(lot));
    await showTabBadge(tab, text, title);
  };
  const kept = async (id: LotId | undefined, entries: readonly EntryId[]): Promise<Outcome<KeptLot>> => {
    const lot = id === undefined ? null : await store.lot(id);
    if (lot === null) return refuse('gone', 'The lot was undone right away, perhaps in another tab.');
    await badge(lot);
    return ok({ lot, undo: () => store.undo(...entries) });
  };
  return {
    setup,
    site,
    venueOfSite: siteOf(setup.sites, site).venueId,
    badge,
    seen: async (facts, readAt) => {
      const seen = await lookUpSeen(store, await recent(), facts, readAt);
      if (seen.kind === 'same' && !seen.lot.dropped) await badge(seen.lot);
      return seen;
    },
    seenQuietly: async (facts, readAt) => lookUpSeen(store, await recent(), facts, readAt),
    watchAll: async (lots) => {
      const added = await store.addLots(
        'page',
        lots.map(({ facts, evidence = {} }) => ({ facts, evidence })),
      );
      return added.ok ? ok(() => store.undo(...added.value.entries)) : added;
    },
    watch: async (lot) => {
      const added = await store.addLots('page', [lot]);
      return added.ok ? kept(added.value.lots[0], added.value.entries) : added;
    },
    update: async (id, set, evidence) => {
      const changed = await store.changeLot(id, { set, evidence });
      return changed.ok
        ? kept(
            id,
            changed.value.map((entry) => entry.id),
          )
        : changed;
    },
    openLots: async () => {
      const lots = await store.lotsByClose({ from: instant(Date.now()), limit: MOST_OFFERED });
      return lots.filter(({ dropped }) => !dropped);
    },
    addComps: async (id, comps) => {
      const lot = await store.lot(id);
      if (lot === null) return refuse('gone', 'That lot was undone, perhaps in another tab.');
      const all = withComps(lot.facts.comps ?? [], comps);
      if (!compsSchema.safeParse(all).success) {
        return refuse('full', 'That lot has as many comparables as it can hold. Remove some on its worksheet.');
      }
      const changed = await store.changeLot(id, { set: { comps: all } });
      if (!changed.ok) return changed;
      const entries = changed.value.map((entry) => entry.id);
      // No word of it on the button: the page in front is not this lot's.
      return ok({ lot: (await store.lot(id)) ?? lot, undo: () => store.undo(...entries) });
    },
    rememberVenue: async (venueId) => {
      const sites = (await store.setup())?.sites;
      const saved = await store.saveSetup({ sites: withSite(sites, { ...siteOf(sites, site), venueId }) });
      return saved.ok ? ok(() => store.undo(...saved.value.map(({ id }) => id))) : saved;
    },
  };
}

/** Remembers where the user pointed, for the next page of the site. */
export async function rememberPlaces(
  store: Store,
  site: string,
  places: readonly PointedPlace[],
): Promise<Outcome<readonly Entry[]>> {
  const sites = (await store.setup())?.sites;
  return store.saveSetup({ sites: withSite(sites, places.reduce(withPlace, siteOf(sites, site))) });
}
