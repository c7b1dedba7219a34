import { useEffect, useState } from 'preact/hooks';
import { demoScenario } from '../../src/demo/demo-scenario.ts';
import type { PurseEntry } from '../../src/domain/setup/purse-entry.ts';
import { type Instant, instant } from '../../src/domain/time/instant.ts';
import { ID_RANDOM_BYTES, nextLotId } from '../../src/journal/sortable-id.ts';
import { openThisStore } from '../../src/store/open-this-store.ts';
import type { Store } from '../../src/store/store.ts';
import { isDemo, shownStore } from '../../src/ui/demo-mode.ts';
import { useWorkspace } from '../../src/ui/workspace.ts';
import { loadDemoBooks } from './demo-books-load.ts';
import { loadDemo } from './load-demo.ts';
import { loadDemoAftermath } from './load-demo-aftermath.ts';
import { loadDemoSeason } from './load-demo-season.ts';

/** Fills an empty list with the invented dealer's week, and goes there. Never touches a list with anything in it. */
export function DemoLoad() {
  const { lots, complete, setupKept } = useWorkspace();
  const [fault, setFault] = useState<string>();
  const [begun, setBegun] = useState(false);
  const taken = lots.length > 0 || setupKept;

  useEffect(() => {
    if (!complete || begun || taken) return;
    setBegun(true);
    load().then(
      (sentence) => (sentence === null ? location.assign('#/lots') : setFault(sentence)),
      (error: unknown) => setFault(String(error)),
    );
  }, [complete, begun, taken]);

  // It is there already, from another visit.
  useEffect(() => {
    if (complete && taken && !begun && isDemo()) location.replace('#/lots');
  }, [complete, taken, begun]);

  if (fault !== undefined) return <p class="note warning">The demo could not be loaded: {fault}</p>;
  if (taken && !begun) {
    return (
      <section class="stack">
        <h1>You already have data here</h1>
        <p>The demo only loads into an empty list, so nothing was changed.</p>
        <p>
          <a href="#/lots">To the lots</a>
        </p>
      </section>
    );
  }
  return <p role="status">Loading a made-up dealer’s week…</p>;
}

/**
 * Through a store of its own, whose clock goes with what it writes: the page's store hears of it as of another tab. Null when all
 * went well, else why not.
 */
async function load(): Promise<string | null> {
  let clock: Instant | 'now' = 'now';
  const opened = await openThisStore(
    () => undefined,
    shownStore(),
    () => (clock === 'now' ? instant(Date.now()) : clock),
  );
  if (!opened.ok) return opened.message;
  const store = opened.value;
  try {
    return await loadInto(store, (to) => {
      clock = to;
    });
  } finally {
    store.close();
  }
}

async function loadInto(store: Store, setClock: (to: Instant | 'now') => void): Promise<string | null> {
  let last: ReturnType<typeof nextLotId> | null = null;
  const now = instant(Date.now());
  const scenario = demoScenario(now, () => {
    last = nextLotId(now, last, crypto.getRandomValues(new Uint8Array(ID_RANDOM_BYTES)));
    return last;
  });
  const before = await loadDemoSeason(store, scenario, setClock);
  if (before !== null) return before;
  setClock('now');
  return (
    (await loadDemo(store, scenario)) ??
    (await loadDemoAftermath(store, scenario.aftermath)) ??
    (await loadDemoBooks(store, scenario.setup, now, new Set(scenario.season.map(({ lot }) => lot.id)))) ??
    loadPurse(store, scenario.purse)
  );
}

/** Last of all: what is owed for the wins of the weeks before comes off by itself. */
async function loadPurse(store: Store, purse: PurseEntry): Promise<string | null> {
  const counted = await store.setPurse({ ...purse, countedAt: instant(Date.now()) });
  return counted.ok ? null : counted.message;
}
