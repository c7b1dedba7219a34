import { useEffect, useState } from 'preact/hooks';
import { cents } from '../../src/domain/money/cents.ts';
import { formatMoney } from '../../src/domain/money/format-money.ts';
import { sayTime } from '../../src/domain/time/say-time.ts';
import type { EntryId } from '../../src/journal/entry.ts';
import type { LotState } from '../../src/journal/lot-state.ts';
import type { HistoryItem } from '../../src/store/history.ts';
import { ScrollX } from '../../src/ui/scroll-x.tsx';
import { useWorkspace } from '../../src/ui/workspace.ts';

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
    say(kept.ok ? 'Taken back.' : kept.message, kept.ok ? kept.value.entry : undefined);
  };

  return (
    <details class="no-print">
      <summary class="strong">What happened to this lot ({items.length})</summary>
      <ScrollX label="What happened to this lot">
        <table class="ledger">
          <thead>
            <tr>
              <th scope="col">When</th>
              <th scope="col">What</th>
              <th scope="col">Who</th>
              <th scope="col">
                <span class="visually-hidden">Take back</span>
              </th>
            </tr>
          </thead>
          <tbody>
            {items.map((item) => (
              <tr key={item.id}>
                <td>{item.read.as === 'unreadable' ? '' : sayTime(item.read.raw.at, setup.store.zone)}</td>
                <td>{item.counts ? wordsOf(item) : <del>{wordsOf(item)}</del>}</td>
                <td>{item.read.as === 'unreadable' ? '' : item.read.raw.author}</td>
                <td>
                  {item.counts && item.read.as === 'known' && item.read.entry.happening.kind === 'lot-changed' && (
                    <button type="button" class="plain" onClick={() => takeBack(item.id)}>
                      Take back
                    </button>
                  )}
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </ScrollX>
    </details>
  );
}

function wordsOf({ read }: HistoryItem): string {
  if (read.as === 'unreadable') return `An entry that can’t be read: ${read.message}`;
  if (read.as === 'unknown') return 'Something that a newer Headroom wrote';
  const { happening } = read.entry;
  switch (happening.kind) {
    case 'lots-added':
      return happening.lots.length === 1 ? 'It was added' : `It came in with ${happening.lots.length - 1} others`;
    case 'lot-dropped':
      return 'No longer watched';
    case 'undone':
      return 'Something was taken back';
    case 'lot-changed':
      return [
        ...Object.entries(happening.set).map(
          ([field, value]) => `${FIELD_WORDS[field] ?? field}: ${valueWords(field, value)}`,
        ),
        ...happening.clear.map((field) => `${FIELD_WORDS[field] ?? field}: emptied`),
      ].join('; ');
    default:
      return '';
  }
}

const FIELD_WORDS: Record<string, string> = {
  vin: 'VIN',
  priceNow: 'Price now',
  proxy: 'Proxy',
  retail: 'Retail',
  recon: 'Recon',
  close: 'Close',
  titleId: 'Title',
  venueId: 'Venue',
  venueName: 'Venue name',
  lotNumber: 'Lot number',
  increment: 'Step',
};

const MONEY_FIELDS: ReadonlySet<string> = new Set(['priceNow', 'increment', 'transport', 'proxy', 'retail']);

function valueWords(field: string, value: unknown): string {
  if (typeof value === 'number') {
    return MONEY_FIELDS.has(field)
      ? formatMoney(cents(value))
      : value.toLocaleString('en-US', { useGrouping: field !== 'year' });
  }
  if (typeof value === 'string') return value;
  if (typeof value === 'object' && value !== null && 'likely' in value) return valueWords(field, value.likely);
  if (typeof value === 'object' && value !== null && 'text' in value) return String(value.text);
  return Array.isArray(value) ? `${value.length} ${value.length === 1 ? 'line' : 'lines'}` : 'changed';
}
