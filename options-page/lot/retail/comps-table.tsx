import { useState } from 'preact/hooks';
import type { AppraisedRetail } from '../../../src/domain/appraisal/appraised-retail.ts';
import type { Comp } from '../../../src/domain/retail/comp.ts';
import type { LocalDate } from '../../../src/domain/time/local-date.ts';
import { useFocusNext } from '../../../src/ui/hooks/use-focus-next.ts';
import { moveBetweenRows } from '../../../src/ui/tables/cells/move-between-rows.ts';
import { removeAt, replaceAt } from '../../../src/ui/tables/list-edit.ts';
import { type CompDraft, compOf, EMPTY_COMP } from './comp-draft.ts';
import { CompRow } from './comp-row.tsx';
import { PasteComps } from './paste-comps.tsx';
import '../../../src/ui/tables/cells/cells.css';
import './comps-table.css';

export interface CompsTableProps {
  readonly comps: readonly Comp[];
  readonly retail: AppraisedRetail | undefined;
  readonly today: LocalDate;
  readonly onChange: (comps: Comp[], said: string) => void;
}

/** Comparables as a spreadsheet shows them; rows copied from one can be pasted anywhere in it. */
export function CompsTable({ comps, retail, today, onChange }: CompsTableProps) {
  const [draft, setDraft] = useState<CompDraft>();
  const [pasting, setPasting] = useState<string>();
  const [fault, setFault] = useState<{ readonly index: number; readonly message: string }>();
  const [root, focusNext] = useFocusNext<HTMLDivElement>();

  const change = (index: number, next: CompDraft) => {
    const comp = compOf(next);
    setFault(comp?.ok === false ? { index, message: comp.message } : undefined);
    if (index === comps.length) setDraft(comp?.ok === true ? undefined : next);
    if (comp?.ok !== true) return;
    const kept = index === comps.length ? [...comps, comp.value] : replaceAt(comps, index, comp.value);
    onChange(kept, 'Comparable saved.');
  };
  const remove = (index: number) => {
    setFault(undefined);
    focusNext('add');
    if (index === comps.length) setDraft(undefined);
    else onChange(removeAt(comps, index), 'Comparable removed.');
  };
  const rows: readonly CompDraft[] = draft === undefined ? comps : [...comps, draft];

  return (
    <div
      class="stack"
      ref={root}
      onPaste={(event) => {
        const text = event.clipboardData?.getData('text/plain') ?? '';
        if (pasting !== undefined || !/[\t\n]/.test(text.trim())) return;
        event.preventDefault();
        setPasting(text);
      }}
    >
      {rows.length > 0 && (
        <table class="ledger cells cells-wide comps" onKeyDown={moveBetweenRows}>
          <caption class="visually-hidden">Comparable cars</caption>
          <thead>
            <tr>
              <th scope="col">Price, $</th>
              <th scope="col">Sold?</th>
              <th scope="col">Miles</th>
              <th scope="col">Year</th>
              <th scope="col">Date</th>
              <th scope="col">Days</th>
              <th scope="col">From</th>
              <th scope="col">Like this lot</th>
              <td />
            </tr>
          </thead>
          {rows.map((comp, index) => (
            <CompRow
              key={index}
              index={index}
              comp={comp}
              adjusted={retail?.grid?.comps[index]}
              odd={retail?.odd.find((one) => one.index === index)}
              hints={retail?.hints.filter((hint) => hint.index === index) ?? []}
              fault={fault?.index === index ? fault.message : undefined}
              onChange={(next) => change(index, next)}
              onRemove={() => remove(index)}
            />
          ))}
        </table>
      )}
      {pasting === undefined ? (
        <p class="row" data-focus="add">
          <button
            type="button"
            disabled={draft !== undefined}
            onClick={() => {
              focusNext(`comp-${comps.length}`);
              setDraft(EMPTY_COMP);
            }}
          >
            Add a comparable
          </button>
          <button type="button" onClick={() => setPasting('')}>
            Paste from a spreadsheet
          </button>
        </p>
      ) : (
        <PasteComps
          text={pasting}
          today={today}
          room={200 - comps.length}
          onUse={(read) => {
            setPasting(undefined);
            focusNext('add');
            onChange(
              [...comps, ...read],
              read.length === 1 ? 'Comparable added.' : `${read.length} comparables added.`,
            );
          }}
          onLeave={() => {
            setPasting(undefined);
            focusNext('add');
          }}
        />
      )}
    </div>
  );
}
