import { useEffect, useState } from 'preact/hooks';
import type { DateOrder } from '../../src/domain/close/date-order.ts';
import { readCloseTime } from '../../src/domain/close/read-close-time.ts';
import { instant } from '../../src/domain/time/instant.ts';
import type { LotState } from '../../src/folds/lot-state.ts';
import { type CloseHabits, closeHabits, withOrder } from '../../src/intake/close-habits.ts';
import { type ImportPlan, importPlan } from '../../src/intake/import-plan.ts';
import type { Meant } from '../../src/intake/import-questions.ts';
import type { Table } from '../../src/intake/open-table.ts';
import { readInChunks } from '../../src/intake/read-in-chunks.ts';
import type { ReadContext } from '../../src/intake/rows/read-context.ts';
import type { ColumnChoice } from '../../src/intake/rows/read-row.ts';
import type { Store } from '../../src/store/store.ts';
import { useWorkspace } from '../../src/ui/workspace.ts';

export type Planning =
  | { readonly state: 'reading'; readonly rows: number }
  | { readonly state: 'failed'; readonly message: string }
  | { readonly state: 'ready'; readonly plan: ImportPlan; readonly habits: CloseHabits };

/**
 * Reads the table under the chosen columns, and again whenever a choice changes; the page stays alive meanwhile.
 * @param order of day and month, where the user has chosen it
 * @param meant what he said that unknown names mean
 */
export function usePlan(
  table: Table,
  columns: readonly ColumnChoice[],
  from: 'file' | 'pasted',
  { order, meant }: { readonly order: DateOrder | undefined; readonly meant: Meant },
): Planning {
  const { store, setup } = useWorkspace();
  const [planning, setPlanning] = useState<Planning>({ state: 'reading', rows: 0 });
  useEffect(() => {
    const stop = new AbortController();
    setPlanning({ state: 'reading', rows: 0 });
    const now = instant(Date.now());
    const context: ReadContext = {
      now,
      from,
      storeZone: setup.store.zone,
      venues: setup.venues,
      titles: setup.titles,
      meant,
      readClose: readCloseTime,
    };
    const progress = (rows: number) => {
      if (!stop.signal.aborted) setPlanning({ state: 'reading', rows });
    };
    const read = async () => {
      const habits = withOrder(await closeHabits(table, columns, context), order);
      const chunks = readInChunks(table, columns, { ...context, closeHabits: habits }, { signal: stop.signal });
      return { habits, plan: await importPlan(chunks, { now, existing: await knownByVin(store) }, progress) };
    };
    read().then(
      ({ habits, plan }) => {
        if (!stop.signal.aborted) setPlanning({ state: 'ready', plan, habits });
      },
      (error: unknown) => {
        const message = error instanceof Error ? error.message : String(error);
        if (!stop.signal.aborted) setPlanning({ state: 'failed', message });
      },
    );
    return () => stop.abort();
  }, [table, columns, from, order, meant, store, setup]);
  return planning;
}

async function knownByVin(store: Store): Promise<(vin: string) => readonly LotState[]> {
  const byVin = new Map<string, LotState[]>();
  for (const lot of await store.allLots()) {
    const { vin } = lot.facts;
    if (vin === undefined) continue;
    const same = byVin.get(vin);
    if (same === undefined) byVin.set(vin, [lot]);
    else same.push(lot);
  }
  return (vin) => byVin.get(vin) ?? [];
}
