import { ZERO } from '../../../src/domain/money/cents.ts';
import type { Estimate, ReconLine } from '../../../src/domain/money/estimate.ts';
import { PPM, ppm } from '../../../src/domain/money/rate.ts';
import { useFocusNext } from '../../../src/ui/hooks/use-focus-next.ts';
import { RateInput } from '../../../src/ui/inputs/rate-input.tsx';
import { TextInput } from '../../../src/ui/inputs/text-input.tsx';
import { moveBetweenRows } from '../../../src/ui/tables/cells/move-between-rows.ts';
import { removeAt, replaceAt, withField } from '../../../src/ui/tables/list-edit.ts';
import { MoneyCell } from '../../../src/ui/tables/money-cell.tsx';
import { CellFaults } from '../cell-faults.tsx';

interface TemplateLinesProps {
  readonly lines: readonly ReconLine[];
  readonly path: readonly PropertyKey[];
  readonly onChange: (lines: ReconLine[]) => void;
}

/** The lines of a template, each with its spread and its chance of being needed. */
export function TemplateLines({ lines, path, onChange }: TemplateLinesProps) {
  const [root, focusNext] = useFocusNext<HTMLFieldSetElement>();
  return (
    <fieldset class="stack" ref={root}>
      <legend>Recon lines</legend>
      {lines.length > 0 && (
        <table class="ledger cells cells-wide template-lines" onKeyDown={moveBetweenRows}>
          <thead>
            <tr>
              <th scope="col">What</th>
              <th scope="col">Low</th>
              <th scope="col">Likely</th>
              <th scope="col">High</th>
              <th scope="col">Needed, %</th>
              <td />
            </tr>
          </thead>
          {lines.map((line, index) => (
            <LineRow
              key={index}
              line={line}
              index={index}
              path={[...path, index]}
              onChange={(next) => onChange(replaceAt(lines, index, next))}
              onRemove={() => {
                focusNext(index < lines.length - 1 ? `row-${index}` : 'add');
                onChange(removeAt(lines, index));
              }}
            />
          ))}
        </table>
      )}
      <p data-focus="add">
        <button
          type="button"
          onClick={() => {
            focusNext(`row-${lines.length}`);
            onChange([...lines, { label: '', amount: { likely: ZERO }, chance: ppm(PPM) }]);
          }}
        >
          Add a recon line
        </button>
      </p>
    </fieldset>
  );
}

interface LineRowProps {
  readonly line: ReconLine;
  readonly index: number;
  readonly path: readonly PropertyKey[];
  readonly onChange: (line: ReconLine) => void;
  readonly onRemove: () => void;
}

function LineRow({ line, index, path, onChange, onRemove }: LineRowProps) {
  const name = `Line ${index + 1}`;
  const end = (key: 'low' | 'high', words: string) => (
    <td>
      <MoneyCell
        label={`${name}, ${words}`}
        value={line.amount[key]}
        onCommit={(cents) => onChange({ ...line, amount: withField<Estimate, typeof key>(line.amount, key, cents) })}
      />
    </td>
  );
  return (
    <tbody>
      <tr>
        <td data-focus={`row-${index}`}>
          <TextInput
            label={`${name}, what`}
            value={line.label === '' ? undefined : line.label}
            placeholder="Tires"
            longest={80}
            required
            onCommit={(label) => label !== undefined && onChange({ ...line, label })}
          />
        </td>
        {end('low', 'low')}
        <td>
          <MoneyCell
            label={`${name}, likely`}
            value={line.amount.likely}
            required
            onCommit={(likely = ZERO) => onChange({ ...line, amount: { ...line.amount, likely } })}
          />
        </td>
        {end('high', 'high')}
        <td>
          <RateInput
            label={`${name}, chance it is needed`}
            value={line.chance}
            unit=""
            required
            onCommit={(chance) => chance !== undefined && onChange({ ...line, chance })}
          />
        </td>
        <td class="cell-act">
          <button
            type="button"
            class="plain"
            aria-label={`Remove ${line.label || name.toLowerCase()}`}
            onClick={onRemove}
          >
            Remove
          </button>
        </td>
      </tr>
      <CellFaults path={path} columns={6} />
    </tbody>
  );
}
