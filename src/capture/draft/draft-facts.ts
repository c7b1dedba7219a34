import type { Evidence } from '../../domain/lot/evidence.ts';
import type { LotFacts } from '../../domain/lot/lot.ts';
import type { Outcome } from '../../domain/outcome.ts';
import { matchTitle } from '../../domain/setup/match-title.ts';
import { matchVenue } from '../../domain/setup/match-venue.ts';
import type { TitleBrand } from '../../domain/setup/money-rules.ts';
import type { Venue } from '../../domain/setup/venue.ts';
import type { DraftFieldName, DraftFields, DraftLot, FieldValue } from './draft-lot.ts';
import { FACT_FIELDS } from './fact-fields.ts';

/** A drafted lot in the journal's own terms, ready to be added once it has an id. */
export interface DraftFacts {
  readonly facts: LotFacts;
  readonly evidence: Readonly<Record<string, Evidence>>;
}

/** What of the setup gives words a meaning: venues and title states by their names. */
export interface KnownNames {
  readonly venues: readonly Pick<Venue, 'id' | 'name'>[];
  readonly titles: readonly Pick<TitleBrand, 'id' | 'name'>[];
  /** The venue of the page's site, if the user has set it. It overrides any name on the page. */
  readonly siteVenueId?: string | undefined;
}

/**
 * The facts of a draft with their evidence. Unsettled fields are left out: they are the user's to decide. The words of a
 * title that the setup does not know are kept as they are, so that the lot gets no max bid before somebody has said what
 * they mean.
 */
export function factsOf(draft: DraftLot, known: KnownNames): DraftFacts {
  const facts: LotFacts = {};
  const evidence: Record<string, Evidence> = {};
  const put = <Name extends DraftFieldName, Field extends keyof LotFacts>(
    name: Name,
    field: Field,
    value: (read: FieldValue<Name>) => LotFacts[Field] | undefined,
  ) => {
    const reading = settledReading(draft.fields, name);
    const fact = reading === undefined ? undefined : value(reading.value);
    if (reading === undefined || fact === undefined || facts[field] !== undefined) return;
    facts[field] = fact;
    evidence[field] = { from: reading.from, text: reading.text, sure: reading.sure };
  };
  // Both schemas give a field of that name the same values, which the compiler can't follow through a table.
  for (const [name, field] of FACT_FIELDS) put(name, field, (value) => value as LotFacts[typeof field]);
  if (known.siteVenueId !== undefined) {
    facts.venueId = known.siteVenueId;
    evidence.venueId = { from: 'typed', text: 'the venue of this site', sure: 'certain' };
  }
  put('venueName', 'venueId', (name) => idOf(matchVenue(name, known.venues)));
  put('title', 'titleId', (title) => idOf(matchTitle(title, known.titles)));
  // A lot without a title is taken as clean. One whose title nobody understands must not be.
  put('title', 'titleId', (title) => title.slice(0, 200));
  const notes = notesOf(draft.fields);
  if (notes !== '') facts.notes = notes;
  if (draft.pageUrl !== '') facts.pageUrl = draft.pageUrl;
  return { facts, evidence };
}

export function settledReading<Name extends DraftFieldName>(fields: DraftFields, name: Name) {
  const field = fields[name];
  return field?.settled === true ? (field.readings[0] as Reading<Name> | undefined) : undefined;
}
type Reading<Name extends DraftFieldName> = NonNullable<DraftFields[Name]>['readings'][number] & {
  value: FieldValue<Name>;
};

const idOf = (named: Outcome<string>): string | undefined => (named.ok ? named.value : undefined);

/** What has no field of its own is kept as text, so that nothing on the page about the car is lost. */
function notesOf(fields: DraftFields): string {
  const said: [string, DraftFieldName][] = [
    ['Title', 'title'],
    ['Condition', 'condition'],
    ['Transmission', 'transmission'],
    ['Drive', 'drive'],
  ];
  return said
    .flatMap(([label, name]) => {
      const reading = settledReading(fields, name);
      return reading === undefined ? [] : [`${label}: ${String(reading.value)}`];
    })
    .join('\n')
    .slice(0, 4000);
}
