import { cents, ZERO } from '../../../src/domain/money/cents.ts';
import type { Increments } from '../../../src/domain/price/increments.ts';
import { useFocusNext } from '../../../src/ui/hooks/use-focus-next.ts';
import { moveBetweenRows } from '../../../src/ui/tables/cells/move-between-rows.ts';
import { removeAt, replaceAt } from '../../../src/ui/tables/list-edit.ts';
import { MoneyCell } from '../../../src/ui/tables/money-cell.tsx';
import { CellFaults } from '../cell-faults.tsx';
import { FaultsAt } from '../faults-at.tsx';

export interface IncrementsTableProps {
  readonly increments: Increments;
  readonly path: readonly PropertyKey[];
  readonly onChange: (increments: Increments) => void;
}

/** The steps in which the price moves. */
export function IncrementsTable({ increments, path, onChange }: IncrementsTableProps) {
  const [root, focusNext] = useFocusNext<HTMLFieldSetElement>();
  const last = increments.at(-1);
  const add = () => {
    focusNext(`row-${increments.length}`);
    const fromCents = last === undefined ? ZERO : cents(last.fromCents + 1_000_000);
    onChange([...increments, { fromCents, stepCents: last?.stepCents ?? cents(10_000) }]);
  };
  return (
    <fieldset class="stack" ref={root}>
      <legend>Bid increments</legend>
      <p class="quiet small">A lot’s own increment overrides these. A max bid always lands on an increment.</p>
      <table class="ledger cells cells-narrow" onKeyDown={moveBetweenRows}>
        <thead>
          <tr>
            <th scope="col">From, $</th>
            <th scope="col">Increment, $</th>
            <td />
          </tr>
        </thead>
        {increments.map((band, index) => (
          <tbody key={index}>
            <tr>
              <td>
                <MoneyCell
                  label={`Increment ${index + 1}, from`}
                  value={band.fromCents}
                  required
                  onCommit={(fromCents = ZERO) => onChange(replaceAt(increments, index, { ...band, fromCents }))}
                />
              </td>
              <td data-focus={`row-${index}`}>
                <MoneyCell
                  label={`Increment ${index + 1}, size`}
                  value={band.stepCents}
                  required
                  onCommit={(stepCents = ZERO) => onChange(replaceAt(increments, index, { ...band, stepCents }))}
                />
              </td>
              <td class="cell-act">
                {increments.length > 1 && (
                  <button
                    type="button"
                    class="plain"
                    aria-label={`Remove increment ${index + 1}`}
                    onClick={() => {
                      focusNext(index < increments.length - 1 ? `row-${index}` : 'add');
                      onChange(removeAt(increments, index));
                    }}
                  >
                    Remove
                  </button>
                )}
              </td>
            </tr>
            <CellFaults path={[...path, index]} columns={3} />
          </tbody>
        ))}
      </table>
      <FaultsAt path={path} exact />
      <p data-focus="add">
        <button type="button" onClick={add}>
          Add an increment from a higher price
        </button>
      </p>
    </fieldset>
  );
}
