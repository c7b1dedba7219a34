import type { FeeEdition } from '../../../src/domain/fees/fee-schedule.ts';
import { useFocusNext } from '../../../src/ui/hooks/use-focus-next.ts';
import { DateInput } from '../../../src/ui/inputs/date-input.tsx';
import { removeAt, replaceAt, withField } from '../../../src/ui/tables/list-edit.ts';
import { FaultsAt } from '../faults-at.tsx';
import { ChargesFields } from './charges-fields.tsx';
import { FeeTableForm } from './fee-table-form.tsx';
import { newTable } from './new-schedule.ts';

export interface EditionFormProps {
  readonly edition: FeeEdition;
  readonly path: readonly PropertyKey[];
  readonly scheduleName: string;
  readonly onChange: (edition: FeeEdition, said: string) => void;
}

/** The rates of some dates: the dates, the fees by price, the fixed charges. */
export function EditionForm({ edition, path, scheduleName, onChange }: EditionFormProps) {
  const { tables, charges } = edition;
  const [root, focusNext] = useFocusNext<HTMLDivElement>();
  const said = `Fees of ${scheduleName} saved.`;
  return (
    <div class="stack loose" ref={root}>
      <div class="fields">
        <DateInput
          label="From"
          value={edition.validFrom}
          hint="Blank: always so far"
          onCommit={(date) => onChange(withField(edition, 'validFrom', date), `Dates of ${scheduleName} saved.`)}
        />
        <DateInput
          label="Until"
          value={edition.validTo}
          hint="Includes that day. Blank: until further notice"
          onCommit={(date) => onChange(withField(edition, 'validTo', date), `Dates of ${scheduleName} saved.`)}
        />
      </div>
      <FaultsAt path={path} exact />
      {tables.length > 0 && (
        <p class="quiet small setup-prose">
          A band starts at its price and ends below the next band. It charges flat plus percent, never less than min and
          never more than max. Enter and the arrow keys move from row to row.
        </p>
      )}
      {tables.map((table, index) => (
        <FeeTableForm
          key={index}
          table={table}
          path={[...path, 'tables', index]}
          focusKey={`table-${index}`}
          onChange={(next, what = said) => onChange({ ...edition, tables: replaceAt(tables, index, next) }, what)}
          onRemove={() => {
            focusNext('add-table');
            onChange(
              { ...edition, tables: removeAt(tables, index) },
              `Removed the fee ${table.label} of ${scheduleName}.`,
            );
          }}
        />
      ))}
      <p data-focus="add-table">
        <button
          type="button"
          onClick={() => {
            focusNext(`table-${tables.length}`);
            onChange(
              { ...edition, tables: [...tables, newTable(tables.length === 0 ? 'Buy fee' : 'Online fee')] },
              `Added a fee by price to ${scheduleName}.`,
            );
          }}
        >
          Add {tables.length === 0 ? 'a' : 'another'} fee by price
        </button>
      </p>
      <ChargesFields
        charges={charges}
        path={[...path, 'charges']}
        onChange={(next, what) => onChange({ ...edition, charges: next }, `${what} of ${scheduleName}.`)}
      />
    </div>
  );
}
