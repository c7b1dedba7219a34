import { useState } from 'preact/hooks';
import { ZERO } from '../../../src/domain/money/cents.ts';
import { ppm } from '../../../src/domain/money/rate.ts';
import type { AppliedCeiling, Ceiling } from '../../../src/domain/retail/ceiling.ts';
import { useFocusNext } from '../../../src/ui/hooks/use-focus-next.ts';
import { removeAt, replaceAt } from '../../../src/ui/tables/list-edit.ts';
import { CeilingFields } from './ceiling-fields.tsx';

export interface CeilingsProps {
  readonly ceilings: readonly Ceiling[];
  readonly applied: readonly AppliedCeiling[];
  readonly onChange: (ceilings: Ceiling[] | undefined, said: string) => void;
}

/** A substitute while it is typed: it caps retail once it has a price. */
export type CeilingDraft = Omit<Ceiling, 'list'> & { readonly list?: Ceiling['list'] };

const EMPTY: CeilingDraft = {
  kind: 'new',
  label: 'A new one',
  markup: ppm(0),
  rebate: ZERO,
  cheaperBy: ZERO,
  inStock: 0,
};

/** What the customer could buy instead, and the most that this lot can bring because of it. */
export function Ceilings({ ceilings, applied, onChange }: CeilingsProps) {
  const [draft, setDraft] = useState<CeilingDraft>();
  const [root, focusNext] = useFocusNext<HTMLDivElement>();
  const change = (index: number, next: CeilingDraft) => {
    const { list } = next;
    if (list === undefined || list === 0) {
      if (index === ceilings.length) setDraft(next);
      return;
    }
    if (index === ceilings.length) setDraft(undefined);
    onChange(
      index === ceilings.length ? [...ceilings, { ...next, list }] : replaceAt(ceilings, index, { ...next, list }),
      'Substitutes saved.',
    );
  };
  const remove = (index: number) => {
    focusNext('add');
    if (index === ceilings.length) return setDraft(undefined);
    const rest = removeAt(ceilings, index);
    return onChange(rest.length === 0 ? undefined : rest, 'Substitute removed.');
  };
  const all: readonly CeilingDraft[] = draft === undefined ? ceilings : [...ceilings, draft];
  return (
    <div class="stack" ref={root}>
      <h3>What a customer could buy instead</h3>
      {all.length === 0 && (
        <p class="quiet">
          Nobody pays more for this lot than for a new one after its rebate, or a plainer one that does the same work.
          That price caps retail.
        </p>
      )}
      {all.map((ceiling, index) => (
        <CeilingFields
          key={index}
          index={index}
          ceiling={ceiling}
          applied={applied[index]}
          onChange={(next) => change(index, next)}
          onRemove={() => remove(index)}
        />
      ))}
      <p data-focus="add">
        <button
          type="button"
          disabled={draft !== undefined || ceilings.length >= 20}
          onClick={() => {
            focusNext(`ceiling-${ceilings.length}`);
            setDraft(EMPTY);
          }}
        >
          Add a substitute
        </button>
      </p>
    </div>
  );
}
