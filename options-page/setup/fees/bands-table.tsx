import type { TargetedClipboardEvent } from 'preact';
import type { FeeBand } from '../../../src/domain/fees/fee-schedule.ts';
import type { RoundingMode } from '../../../src/domain/money/rounding.ts';
import { useFocusNext } from '../../../src/ui/hooks/use-focus-next.ts';
import { moveBetweenRows } from '../../../src/ui/tables/cells/move-between-rows.ts';
import { insertAt, removeAt, replaceAt } from '../../../src/ui/tables/list-edit.ts';
import { FaultsAt } from '../faults-at.tsx';
import { bandAfter, fallAt } from './band-edit.ts';
import { BandRow } from './band-row.tsx';

export interface BandsTableProps {
  readonly bands: readonly FeeBand[];
  readonly label: string;
  readonly rounding: RoundingMode;
  readonly path: readonly PropertyKey[];
  readonly onChange: (bands: FeeBand[]) => void;
  /** A table was pasted into a cell, or pasting was asked for (with no text). */
  readonly onPaste: (text: string) => void;
  readonly onRemoveTable: () => void;
}

/** The bands as a spreadsheet shows them: one row from each price upward, empty cells meaning nothing. */
export function BandsTable(props: BandsTableProps) {
  const { bands, label, rounding, path, onChange, onPaste, onRemoveTable } = props;
  const [root, focusNext] = useFocusNext<HTMLDivElement>();
  const insert = (index: number) => {
    focusNext(`row-${index}`);
    onChange(insertAt(bands, index, bandAfter(bands, index - 1)));
  };
  return (
    <div class="stack" ref={root} data-focus="bands">
      <table class="ledger cells cells-wide" onKeyDown={moveBetweenRows} onPaste={(event) => takeTable(event, onPaste)}>
        <caption class="visually-hidden">Bands of {label}</caption>
        <thead>
          <tr>
            <th scope="col">From, $</th>
            <th scope="col">Flat, $</th>
            <th scope="col">Percent</th>
            <th scope="col">Min, $</th>
            <th scope="col">Max, $</th>
            <td />
          </tr>
        </thead>
        {bands.map((band, index) => (
          <BandRow
            key={index}
            band={band}
            index={index}
            fall={fallAt(bands, index, rounding)}
            path={[...path, index]}
            onChange={(next) => onChange(replaceAt(bands, index, next))}
            onInsert={() => insert(index + 1)}
            {...(bands.length > 1
              ? {
                  onRemove: () => {
                    focusNext(`row-${Math.min(index, bands.length - 2)}`);
                    onChange(removeAt(bands, index));
                  },
                }
              : {})}
          />
        ))}
      </table>
      <FaultsAt path={path} exact />
      <p class="row">
        <button type="button" onClick={() => insert(bands.length)}>
          Add a band
        </button>
        <button type="button" onClick={() => onPaste('')}>
          Paste fee bands
        </button>
        <button type="button" class="plain" onClick={onRemoveTable}>
          Remove {label}
        </button>
      </p>
    </div>
  );
}

/** One figure pasted into a cell is the cell's; several are a table. */
function takeTable(event: TargetedClipboardEvent<HTMLTableElement>, onPaste: (text: string) => void): void {
  const text = event.clipboardData?.getData('text/plain') ?? '';
  if (!/[\t\n]/.test(text.trim())) return;
  event.preventDefault();
  onPaste(text);
}
