import type { DemoScenario } from '../../src/demo/demo-scenario.ts';
import { subjectOfLot } from '../../src/journal/subject.ts';
import type { Store } from '../../src/store/store.ts';

/** Writes the invented dealer's setup, lots, what was said back to their calls, and past sales into an empty store. Null when all went well, else why not. */
export async function loadDemo(store: Store, { setup, lots, past, calls }: DemoScenario): Promise<string | null> {
  const saved = await store.saveSetup(setup);
  if (!saved.ok) return saved.message;
  const added = await store.addLots('file', lots);
  if (!added.ok) return added.message;
  const said = await store.append(
    calls.flatMap(({ lot, happening }) => {
      const id = added.value.lots[lot];
      return id === undefined ? [] : { subject: subjectOfLot(id), happening };
    }),
  );
  return said.ok ? loadPast(store, past) : said.message;
}

/** The weeks before: the lots, then what was bid on each and how it ended. */
async function loadPast(store: Store, past: DemoScenario['past']): Promise<string | null> {
  const added = await store.addLots('file', past.lots);
  if (!added.ok) return added.message;
  // The store gives each lot an id of its own, in the order in which they came.
  const idOf = new Map(past.lots.map(({ id }, i) => [id, added.value.lots[i]]));
  const changes = past.sales.flatMap(({ lot, happenings }) => {
    const id = idOf.get(lot);
    return id === undefined ? [] : happenings.map((happening) => ({ subject: subjectOfLot(id), happening }));
  });
  const written = await store.append(changes);
  return written.ok ? null : written.message;
}
