import { MINUTE } from '../../src/domain/time/units.ts';
import type { LotState } from '../../src/folds/lot-state.ts';
import { useNow } from '../../src/ui/hooks/use-now.ts';
import { useWorkspace } from '../../src/ui/workspace.ts';
import type { RowWords } from '../../src/views/lots/row-words.ts';
import { countWords } from '../../src/views/words/count-words.ts';
import { COLUMNS } from './columns.tsx';

interface PrintedListProps {
  readonly lots: readonly LotState[];
  readonly wordsOf: (lot: LotState) => RowWords;
}

/** Some twenty sheets: more is no list for a person, and the file for a spreadsheet holds all of it. */
const MOST = 600;

/** The list on paper: every lot that is shown, not only the rows in sight. */
export function PrintedList({ lots, wordsOf }: PrintedListProps) {
  const { setup } = useWorkspace();
  const now = useNow(MINUTE);
  return (
    <section class="printed-list">
      <p>
        {lots.length > MOST
          ? `The first ${MOST.toLocaleString('en-US')} of ${lots.length.toLocaleString('en-US')} lots; “Save as CSV” has all of them.`
          : `${countWords(lots.length, 'lot', 'lots')}.`}{' '}
        Closes in store time ({setup.store.zone}).
      </p>
      <table class="ledger">
        <thead>
          <tr>
            {COLUMNS.map(({ key, label, number }) => (
              <th key={key} scope="col" class={number && 'number'}>
                {label}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {lots.slice(0, MOST).map((lot) => {
            const row = wordsOf(lot);
            return (
              <tr key={lot.id}>
                {COLUMNS.map(({ key, number, paper }) => (
                  <td key={key} class={number && 'number'}>
                    {paper(row, now, lot.facts)}
                  </td>
                ))}
              </tr>
            );
          })}
        </tbody>
      </table>
    </section>
  );
}
