import { thisZone } from '../browser/this-zone.ts';
import { wholeSetup } from '../domain/setup/starting-setup.ts';
import type { Instant } from '../domain/time/instant.ts';
import type { Store } from '../store/store.ts';
import type { NextLots } from '../store/views/first-rows.ts';
import { readFirstRows } from '../store/views/read-first-rows.ts';
import type { RowWords } from '../views/lots/row-words.ts';
import { standingsUnder } from '../views/lots/standing.ts';
import { wordsUnder } from '../views/lots/words-under.ts';
import { seeToFirstFolders } from './first-folders-keeper.ts';

/** More than fit any screen, since some will have closed when they are shown. */
const ROWS = 40;

/**
 * Sees to it that the list's first rows are kept in words, so that the companion page can show them before it can work
 * anything out. Does nothing while those that are kept still hold and most of them are still to close.
 * @param build which Headroom this is
 */
export async function seeToFirstRows(store: Store, build: string, now: Instant): Promise<void> {
  const kept = (await readFirstRows(build)) as readonly RowWords[];
  const over = kept.filter(({ close }) => close !== undefined && close.instant <= now);
  if (kept.length > 0 && over.length <= kept.length / 2) return;
  await store.keepFirstRows({ build, from: now, limit: ROWS, inWords });
}

async function inWords({ setup: kept, planned, lots, sameCars }: NextLots): Promise<readonly RowWords[] | null> {
  // Without a store of his own, the user's zone is that of the computer, which may be another one tomorrow.
  if (lots.length === 0 || kept?.store === undefined) return null;
  const setup = wholeSetup(kept, thisZone());
  const watched = sameCars.filter(({ dropped }) => !dropped);
  return lots.map(wordsUnder(setup, standingsUnder(setup, planned), [...lots, ...watched]));
}

/** Changes often come several at a time, and calls come first. */
const CALM_MS = 1_500;

/** Gives what to call after each look into the store: some calm moments later the first rows are seen to. */
export function firstRowsKeeper(world: {
  readonly now: () => Instant;
  readonly openStore: () => Promise<{ readonly ok: true; readonly value: Store } | { readonly ok: false }>;
  readonly build: () => string;
  readonly after: (ms: number, then: () => void) => () => void;
}): () => void {
  let callOff: () => void = () => undefined;
  const see = async () => {
    const opened = await world.openStore();
    if (!opened.ok) return;
    const [store, build, now] = [opened.value, world.build(), world.now()];
    await seeToFirstRows(store, build, now)
      .then(() => seeToFirstFolders(store, build, now))
      .finally(() => store.close());
  };
  return () => {
    callOff();
    // Without them the page opens as it did the very first time, and the next look sees to them again.
    callOff = world.after(CALM_MS, () => void see().catch(() => undefined));
  };
}
