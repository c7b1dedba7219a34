import { type DraftFacts, factsOf, type KnownNames } from './draft-facts.ts';
import type { DraftFieldName, DraftFields, DraftLot, FieldValue } from './draft-lot.ts';
import { FACT_FIELDS } from './fact-fields.ts';

/** A draft as the user has put it right so far. Nothing is kept by this. */
export interface DraftEdit {
  readonly draft: DraftLot;
  /** Fields whose value is the user's own word. */
  readonly typed: ReadonlySet<DraftFieldName>;
  /** Fields of whose readings he chose one. */
  readonly picked: ReadonlySet<DraftFieldName>;
  /** The venue and title he chose from the setup. */
  readonly venueId?: string | undefined;
  readonly titleId?: string | undefined;
}

export const unedited = (draft: DraftLot): DraftEdit => ({ draft, typed: new Set(), picked: new Set() });

/** The same corrections on the page as it was read again. */
export function withDraft(edit: DraftEdit, draft: DraftLot): DraftEdit {
  if (edit.draft === draft) return edit;
  const fields: Record<string, unknown> = { ...draft.fields };
  for (const name of edit.typed) fields[name] = edit.draft.fields[name];
  // Each field was taken from a draft under its own name.
  const again: DraftEdit = {
    ...edit,
    picked: new Set<DraftFieldName>(),
    draft: { ...draft, fields: fields as DraftFields },
  };
  return [...edit.picked].reduce<DraftEdit>((now, name) => withPicked(now, name, pickedAgain(edit, now, name)), again);
}

/** Where the reading that was chosen stands among what the page says now; -1 where it no longer says it. */
function pickedAgain(before: DraftEdit, now: DraftEdit, name: DraftFieldName): number {
  const chosen = before.draft.fields[name]?.readings[0];
  return now.draft.fields[name]?.readings.findIndex(({ text }) => text === chosen?.text) ?? -1;
}

/** Whether a field is to be answered before the lot is kept: its readings differ, or its close can mean several moments. */
export function isAsked({ draft, typed, picked }: DraftEdit, name: DraftFieldName): boolean {
  const field = draft.fields[name];
  const first = field?.readings[0];
  if (field === undefined || first === undefined) return false;
  if (name === 'close' && typeof first.value === 'object' && first.value.doubts.length > 0) return true;
  if (typed.has(name) || picked.has(name)) return false;
  if (!field.settled) return true;
  return (name === 'priceNow' || name === 'close') && field.readings.length > 1 && first.sure !== 'certain';
}

/** With a value typed in; undefined empties the field. */
export function withTyped<Name extends DraftFieldName>(
  edit: DraftEdit,
  name: Name,
  value: FieldValue<Name> | undefined,
): DraftEdit {
  const { [name]: _, ...others } = edit.draft.fields;
  const typed = new Set(edit.typed);
  if (value === undefined) {
    typed.delete(name);
    return { ...edit, typed, draft: { ...edit.draft, fields: others } };
  }
  typed.add(name);
  const reading = { value, from: 'pointed', text: '', sure: 'certain' } as const;
  const fields = { ...others, [name]: { settled: true, readings: [reading] } };
  // The key and its value have one and the same name, which the compiler can't follow through a computed key.
  return { ...edit, typed, draft: { ...edit.draft, fields: fields as DraftFields } };
}

/** With one of several readings chosen. */
export function withPicked(edit: DraftEdit, name: DraftFieldName, at: number): DraftEdit {
  const field = edit.draft.fields[name];
  const picked = field?.readings[at];
  if (field === undefined || picked === undefined) return edit;
  const readings = [picked, ...field.readings.filter((reading) => reading !== picked)];
  const fields = { ...edit.draft.fields, [name]: { settled: true, readings } };
  // As above.
  const chosen = new Set([...edit.picked, name]);
  return { ...edit, picked: chosen, draft: { ...edit.draft, fields: fields as DraftFields } };
}

const TYPED = { from: 'typed', text: '', sure: 'certain' } as const;

/** The facts to be kept, each with where it came from: the page, or the user. */
export function editedFacts(edit: DraftEdit, known: KnownNames): DraftFacts {
  const { facts, evidence } = factsOf(edit.draft, known);
  const chosen = { ...facts };
  const sources = { ...evidence };
  for (const [name, field] of FACT_FIELDS) {
    if (edit.typed.has(name) && chosen[field] !== undefined) sources[field] = TYPED;
  }
  for (const field of ['venueId', 'titleId'] as const) {
    if (edit[field] === undefined) continue;
    chosen[field] = edit[field];
    sources[field] = TYPED;
  }
  return { facts: chosen, evidence: sources };
}
