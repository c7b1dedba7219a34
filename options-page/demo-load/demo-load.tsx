import { useEffect, useState } from 'preact/hooks';
import { type DemoScenario, demoScenario } from '../../src/demo/demo-scenario.ts';
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
import { loadDemoSeason, pacedClock } from './load-demo-season.ts';

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
 * The months before come first, through a store whose clock goes with what it writes and that tells nobody: a page and a background that
 * heard of each of its two hundred writes would read and plan anew after each. The week itself is told as from another tab, so
 * that everything is read then. Null when all went well, else why not.
 */
async function load(): Promise<string | null> {
  let last: ReturnType<typeof nextLotId> | null = null;
  const now = instant(Date.now());
  const scenario = demoScenario(now, () => {
    last = nextLotId(now, last, crypto.getRandomValues(new Uint8Array(ID_RANDOM_BYTES)));
    return last;
  });
  const clock = pacedClock(now);
  const before = await withStore({ channel: false, now: clock.now }, (store) => loadDemoSeason(store, scenario, clock));
  return before ?? withStore({}, (store) => loadWeek(store, scenario, now));
}

async function withStore(
  otherwise: Parameters<typeof openThisStore>[2],
  work: (store: Store) => Promise<string | null>,
): Promise<string | null> {
  const opened = await openThisStore(() => undefined, shownStore(), otherwise);
  if (!opened.ok) return opened.message;
  try {
    return await work(opened.value);
  } finally {
    opened.value.close();
  }
}

async function loadWeek(store: Store, scenario: DemoScenario, now: Instant): Promise<string | null> {
  const done = new Set(scenario.season.map(({ lot }) => lot.id));
  return (
    (await loadDemo(store, scenario)) ??
    (await loadDemoAftermath(store, scenario.aftermath)) ??
    (await loadDemoBooks(store, scenario.setup, now, done)) ??
    loadPurse(store, scenario.purse)
  );
}

/** Last of all: what is owed for the wins of the weeks before comes off by itself. */
async function loadPurse(store: Store, purse: PurseEntry): Promise<string | null> {
  const counted = await store.setPurse({ ...purse, countedAt: instant(Date.now()) });
  return counted.ok ? null : counted.message;
}
