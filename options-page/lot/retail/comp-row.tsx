import { FIRST_YEAR } from '../../../src/domain/lot/parse-year.ts';
import { type AdjustedComp, counts } from '../../../src/domain/retail/adjusted-comp.ts';
import type { OddComp } from '../../../src/domain/retail/odd-comps.ts';
import type { RetailHint } from '../../../src/domain/retail/retail-hints.ts';
import { ChoiceInput } from '../../../src/ui/inputs/choice-input.tsx';
import { DateInput } from '../../../src/ui/inputs/date-input.tsx';
import { NumberInput } from '../../../src/ui/inputs/number-input.tsx';
import { TextInput } from '../../../src/ui/inputs/text-input.tsx';
import { withField } from '../../../src/ui/tables/list-edit.ts';
import { MoneyCell } from '../../../src/ui/tables/money-cell.tsx';
import { CompDifferences } from './comp-differences.tsx';
import type { CompDraft } from './comp-draft.ts';
import { whole } from './retail-words.ts';

export interface CompRowProps {
  readonly index: number;
  readonly comp: CompDraft;
  /** What it says of this lot; absent while it is not a comparable yet. */
  readonly adjusted: AdjustedComp | undefined;
  readonly odd: OddComp | undefined;
  readonly hints: readonly RetailHint[];
  readonly fault: string | undefined;
  readonly onChange: (comp: CompDraft) => void;
  readonly onRemove: () => void;
}

/** How many cells a row has, for what spans them all. */
export const COMP_COLUMN_COUNT = 9;

/** One comparable: a row of figures, and under it what is special about it. */
export function CompRow({ index, comp, adjusted, odd, hints, fault, onChange, onRemove }: CompRowProps) {
  // The word that tells the cells apart comes first: on a phone the label is cut off behind it.
  const of = `comparable ${index + 1}`;
  return (
    <tbody class={comp.leftOut ? 'comp left-out' : 'comp'}>
      <tr data-focus={`comp-${index}`}>
        <td>
          <MoneyCell
            label={`Price, ${of}`}
            value={comp.price}
            required={adjusted !== undefined}
            onCommit={(price) => onChange(withField(comp, 'price', price))}
          />
        </td>
        <td>
          <ChoiceInput
            label={`Sold or asking, ${of}`}
            value={comp.kind}
            choices={[
              { value: 'sold', label: 'sold' },
              { value: 'asking', label: 'asking' },
            ]}
            onCommit={(kind) => onChange({ ...comp, kind: kind === 'asking' ? 'asking' : 'sold' })}
          />
        </td>
        <td>
          <NumberInput
            label={`Miles, ${of}`}
            value={comp.miles}
            least={0}
            most={2_000_000}
            onCommit={(miles) => onChange(withField(comp, 'miles', miles))}
          />
        </td>
        <td>
          <NumberInput
            label={`Year, ${of}`}
            value={comp.year}
            least={FIRST_YEAR}
            most={2100}
            grouped={false}
            onCommit={(year) => onChange(withField(comp, 'year', year))}
          />
        </td>
        <td>
          <DateInput
            label={`Date, ${of}`}
            value={comp.date}
            onCommit={(date) => onChange(withField(comp, 'date', date))}
          />
        </td>
        <td>
          <NumberInput
            label={`Days listed, ${of}`}
            value={comp.daysListed}
            least={0}
            most={3650}
            onCommit={(days) => onChange(withField(comp, 'daysListed', days))}
          />
        </td>
        <td>
          <TextInput
            label={`From, ${of}`}
            value={comp.source}
            onCommit={(source) => onChange(withField(comp, 'source', source))}
          />
        </td>
        <td class="number comp-adjusted">
          {adjusted === undefined ? (
            <span class="missing">no price</span>
          ) : (
            <span class={counts(adjusted) ? 'strong' : 'quiet'}>{whole(adjusted.adjusted)}</span>
          )}
        </td>
        <td class="cell-act">
          <button type="button" class="plain" aria-label={`Remove ${of}`} onClick={onRemove}>
            Remove
          </button>
        </td>
      </tr>
      <tr class="cell-faults comp-more">
        <td colSpan={COMP_COLUMN_COUNT}>
          <CompDifferences name={`Comparable ${index + 1}`} comp={comp} onChange={onChange} />
          {fault && (
            <p class="fault" role="alert">
              {fault}
            </p>
          )}
          {adjusted?.tooFar && (
            <p class="small note warning" role="alert">
              {adjusted.tooFar}
            </p>
          )}
          {odd && (
            <p class="small note">
              <strong>Odd:</strong> far {odd.side} what the others suggest. Without it, retail would be{' '}
              {whole(odd.withoutIt)}. Check its price, trim and title. Leave it out if it is another kind of car.
            </p>
          )}
          {hints.map((hint) => (
            <p key={hint.kind + hint.message} class="small quiet">
              {hint.message}
            </p>
          ))}
        </td>
      </tr>
    </tbody>
  );
}
