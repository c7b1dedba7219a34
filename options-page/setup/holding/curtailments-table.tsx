import type { FloorPlan } from '../../../src/domain/carrying/carrying-rules.ts';
import { PPM, ppm } from '../../../src/domain/money/rate.ts';
import { useFocusNext } from '../../../src/ui/hooks/use-focus-next.ts';
import { NumberInput } from '../../../src/ui/inputs/number-input.tsx';
import { RateInput } from '../../../src/ui/inputs/rate-input.tsx';
import { moveBetweenRows } from '../../../src/ui/tables/cells/move-between-rows.ts';
import { removeAt, replaceAt } from '../../../src/ui/tables/list-edit.ts';
import { CellFaults } from '../cell-faults.tsx';
import { FaultsAt } from '../faults-at.tsx';

export interface CurtailmentsTableProps {
  readonly curtailments: FloorPlan['curtailments'];
  readonly path: readonly PropertyKey[];
  readonly onChange: (curtailments: FloorPlan['curtailments']) => void;
}

/** What must be paid back while a car is still there. */
export function CurtailmentsTable({ curtailments, path, onChange }: CurtailmentsTableProps) {
  const [root, focusNext] = useFocusNext<HTMLFieldSetElement>();
  const paidBack = curtailments.reduce((total, each) => total + each.sharePpm, 0);
  const add = () => {
    focusNext(`row-${curtailments.length}`);
    const day = (curtailments.at(-1)?.day ?? 30) + 30;
    onChange([...curtailments, { day, sharePpm: ppm(Math.max(0, Math.min(100_000, PPM - paidBack))) }]);
  };
  return (
    <fieldset class="stack" ref={root}>
      <legend>Curtailments</legend>
      {curtailments.length === 0 ? (
        <p class="quiet small setup-prose">
          None: nothing is paid back before the car sells. For example, 10% of the advance on day 60 and 90% on day 90.
        </p>
      ) : (
        <table class="ledger cells cells-narrow" onKeyDown={moveBetweenRows}>
          <thead>
            <tr>
              <th scope="col">On day</th>
              <th scope="col">Paid back, %</th>
              <td />
            </tr>
          </thead>
          {curtailments.map((each, index) => (
            <tbody key={index}>
              <tr>
                <td data-focus={`row-${index}`}>
                  <NumberInput
                    label={`Curtailment ${index + 1}, day`}
                    value={each.day}
                    least={1}
                    most={3650}
                    required
                    onCommit={(day) => day !== undefined && onChange(replaceAt(curtailments, index, { ...each, day }))}
                  />
                </td>
                <td>
                  <RateInput
                    label={`Curtailment ${index + 1}, share`}
                    value={each.sharePpm}
                    unit=""
                    required
                    onCommit={(sharePpm = ppm(0)) => onChange(replaceAt(curtailments, index, { ...each, sharePpm }))}
                  />
                </td>
                <td class="cell-act">
                  <button
                    type="button"
                    class="plain"
                    aria-label={`Remove curtailment ${index + 1}`}
                    onClick={() => {
                      focusNext(index < curtailments.length - 1 ? `row-${index}` : 'add');
                      onChange(removeAt(curtailments, index));
                    }}
                  >
                    Remove
                  </button>
                </td>
              </tr>
              <CellFaults path={[...path, index]} columns={3} />
            </tbody>
          ))}
        </table>
      )}
      <FaultsAt path={path} exact />
      <p data-focus="add">
        <button type="button" onClick={add}>
          Add a curtailment
        </button>
      </p>
    </fieldset>
  );
}
