import { type DraftFacts, factsOf, type KnownNames } from '../../capture/draft-facts.ts';
import type { DraftFieldName, DraftFields, DraftLot, FieldValue } from '../../capture/draft-lot.ts';
import type { LotField } from '../../domain/lot/lot.ts';

/** A draft as the user has put it right so far. Nothing is kept by this. */
export interface DraftEdit {
  readonly draft: DraftLot;
  /** Fields whose value is the user's own word. */
  readonly typed: ReadonlySet<DraftFieldName>;
  /** The venue and title he chose from the setup. */
  readonly venueId?: string | undefined;
  readonly titleId?: string | undefined;
}

export const unedited = (draft: DraftLot): DraftEdit => ({ draft, typed: new Set() });

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
  return { ...edit, draft: { ...edit.draft, fields: fields as DraftFields } };
}

/** Which fact of a lot a field of a page becomes; what is not here goes into the notes or is only shown. */
export const FACT_OF: Partial<Record<DraftFieldName, LotField>> = {
  vin: 'vin',
  year: 'year',
  make: 'make',
  model: 'model',
  trim: 'trim',
  miles: 'miles',
  lotNumber: 'lotNumber',
  runNumber: 'lotNumber',
  venueName: 'venueName',
  sale: 'sale',
  seller: 'seller',
  location: 'location',
  close: 'close',
  priceNow: 'priceNow',
  increment: 'increment',
};

const TYPED = { from: 'typed', text: '', sure: 'certain' } as const;

/** The facts to be kept, each with where it came from: the page, or the user. */
export function editedFacts(edit: DraftEdit, known: KnownNames): DraftFacts {
  const { facts, evidence } = factsOf(edit.draft, known);
  const chosen = { ...facts };
  const sources = { ...evidence };
  for (const name of edit.typed) {
    const field = FACT_OF[name];
    if (field !== undefined && chosen[field] !== undefined) sources[field] = TYPED;
  }
  for (const field of ['venueId', 'titleId'] as const) {
    if (edit[field] === undefined) continue;
    chosen[field] = edit[field];
    sources[field] = TYPED;
  }
  return { facts: chosen, evidence: sources };
}
