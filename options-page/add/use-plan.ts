import { useEffect, useState } from 'preact/hooks';
import { instant } from '../../src/domain/time/instant.ts';
import { readCloseTime } from '../../src/domain/time/read-close-time.ts';
import type { LotState } from '../../src/folds/lot-state.ts';
import { type ImportPlan, importPlan } from '../../src/intake/import-plan.ts';
import type { Table } from '../../src/intake/open-table.ts';
import { readInChunks } from '../../src/intake/read-in-chunks.ts';
import type { ReadContext } from '../../src/intake/rows/read-context.ts';
import type { ColumnChoice } from '../../src/intake/rows/read-row.ts';
import type { Store } from '../../src/store/store.ts';
import { useWorkspace } from '../../src/ui/workspace.ts';

export type Planning =
  | { readonly state: 'reading'; readonly rows: number }
  | { readonly state: 'failed'; readonly message: string }
  | { readonly state: 'ready'; readonly plan: ImportPlan };

/** Reads the table under the chosen columns, and again whenever a choice changes; the page stays alive meanwhile. */
export function usePlan(table: Table, columns: readonly ColumnChoice[], from: 'file' | 'pasted'): Planning {
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
      readClose: readCloseTime,
    };
    const chunks = readInChunks(table, columns, context, { signal: stop.signal });
    const progress = (rows: number) => {
      if (!stop.signal.aborted) setPlanning({ state: 'reading', rows });
    };
    knownByVin(store)
      .then((existing) => importPlan(chunks, { now, existing }, progress))
      .then(
        (plan) => {
          if (!stop.signal.aborted) setPlanning({ state: 'ready', plan });
        },
        (error: unknown) => {
          const message = error instanceof Error ? error.message : String(error);
          if (!stop.signal.aborted) setPlanning({ state: 'failed', message });
        },
      );
    return () => stop.abort();
  }, [table, columns, from, store, setup]);
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
