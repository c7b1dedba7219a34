import { useEffect, useState } from 'preact/hooks';
import { sayTime } from '../../src/domain/time/say-time.ts';
import type { LotState } from '../../src/folds/lot-state.ts';
import { rowOf } from '../../src/journal/happening.ts';
import type { EntryId } from '../../src/journal/ids.ts';
import type { HistoryItem } from '../../src/store/journal/history.ts';
import { Ledger } from '../../src/ui/tables/ledger.tsx';
import { ScrollX } from '../../src/ui/tables/scroll-x.tsx';
import { useWorkspace } from '../../src/ui/workspace.ts';
import { sayItem } from '../../src/views/history/say-item.ts';

/** Everything the journal says about this lot, the latest first, each with its undo. */
export function History({ lot }: { lot: LotState }) {
  const { store, setup, undo, say } = useWorkspace();
  const [items, setItems] = useState<readonly HistoryItem[]>([]);
  useEffect(() => {
    let current = true;
    store.historyOfLot(lot.id).then(
      (found) => current && setItems([...found].reverse()),
      (error: unknown) => say(String(error)),
    );
    return () => {
      current = false;
    };
  }, [store, lot, say]);

  const takeBack = async (entry: EntryId) => {
    const kept = await undo(entry);
    say(kept.ok ? 'Undone.' : kept.message, kept.ok ? kept.value.entry : undefined);
  };

  return (
    <details class="no-print">
      <summary class="strong">History of this lot ({items.length})</summary>
      <ScrollX label="History of this lot">
        <Ledger
          rows={items}
          rowKey={({ id }) => id}
          columns={[
            {
              label: 'When',
              cell: ({ read }) => (read.as === 'unreadable' ? '' : sayTime(read.raw.at, setup.store.zone)),
            },
            { label: 'What', cell: ({ counts, read }) => (counts ? sayItem(read) : <del>{sayItem(read)}</del>) },
            { label: 'Who', cell: ({ read }) => (read.as === 'unreadable' ? '' : read.raw.author) },
            {
              label: 'Undo',
              quietHead: true,
              cell: ({ id, counts, read }) =>
                counts &&
                read.as === 'known' &&
                rowOf(read.entry.happening).undo === 'in history' && (
                  <button type="button" class="plain" onClick={() => takeBack(id)}>
                    Undo
                  </button>
                ),
            },
          ]}
        />
      </ScrollX>
    </details>
  );
}
