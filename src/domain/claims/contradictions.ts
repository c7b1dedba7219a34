import type { LotFacts } from '../lot/lot.ts';
import type { Instant } from '../time/instant.ts';
import { examineVin } from '../vin/examine-vin.ts';
import { readVin } from '../vin/read-vin.ts';

/** What one source says of the car: this listing, an earlier sale of it, a report that was read. */
export interface Sighting {
  /** As a sentence can name it: "this listing", "its sale of 3 March". */
  readonly source: string;
  /** When it was so; leave out when that is not known, and nothing is concluded from the order. */
  readonly at?: Instant;
  readonly facts: Pick<LotFacts, 'year' | 'miles' | 'make' | 'model' | 'trim' | 'titleId' | 'vin'>;
}

/** Two statements that cannot both be right. */
export interface Contradiction {
  readonly kind: 'vin-year' | 'year' | 'miles' | 'miles-fell' | 'make' | 'model' | 'trim' | 'title' | 'vin';
  /** Says who says what, and what to do. */
  readonly message: string;
}

/**
 * Where this listing disagrees with its own VIN, with its own statements, or with what others say of the same car.
 * @param others other sources for the same car, earlier lives included; the listing's own second figures too
 * @param thisYear the calendar year now, to tell which model years a VIN can mean
 */
export function contradictionsOf(
  listing: Sighting,
  others: readonly Sighting[],
  thisYear: number,
): readonly Contradiction[] {
  return [...vinYear(listing, thisYear), ...others.flatMap((other) => between(listing, other))];
}

function vinYear({ facts }: Sighting, thisYear: number): readonly Contradiction[] {
  const vin = facts.vin === undefined ? undefined : readVin(facts.vin);
  if (!vin?.ok) return [];
  return examineVin(vin.value, { year: facts.year, thisYear })
    .doubts.filter((doubt) => doubt.kind === 'year-differs')
    .map((doubt) => ({ kind: 'vin-year', message: doubt.message }));
}

function between(listing: Sighting, other: Sighting): readonly Contradiction[] {
  const found: Contradiction[] = [...mileage(listing, other)];
  for (const [field, what] of COMPARED) {
    const here = listing.facts[field];
    const there = other.facts[field];
    if (here === undefined || there === undefined || alike(here, there)) continue;
    const kind = field === 'titleId' ? 'title' : field;
    const message = `${capital(listing.source)} says ${what} ${here}, ${other.source} says ${there}. Find out which is right before you bid.`;
    found.push({ kind, message });
  }
  return found;
}

const COMPARED = [
  ['vin', 'VIN'],
  ['year', 'model year'],
  ['make', 'make'],
  ['model', 'model'],
  ['trim', 'trim'],
  ['titleId', 'title'],
] as const satisfies readonly (readonly [keyof Sighting['facts'], string])[];

/** Spelling and blanks carry no money. */
const alike = (one: string | number, other: string | number): boolean => plain(one) === plain(other);
const plain = (value: string | number): string =>
  String(value)
    .toLowerCase()
    .replace(/[\s\-_.]+/g, '');

/** Miles only ever rise: fewer than an earlier sale showed is the one disagreement that time cannot explain. */
function mileage(listing: Sighting, other: Sighting): readonly Contradiction[] {
  const here = listing.facts.miles;
  const there = other.facts.miles;
  if (here === undefined || there === undefined || here === there) return [];
  if (listing.at === undefined || other.at === undefined || listing.at === other.at) {
    if (roundedAlike(here, there)) return [];
    const message = `${capital(listing.source)} says ${miles(here)}, ${other.source} says ${miles(there)}. Ask for a photo of the lit odometer.`;
    return [{ kind: 'miles', message }];
  }
  const [later, earlier] = listing.at > other.at ? [listing, other] : [other, listing];
  const now = later.facts.miles ?? 0;
  const then = earlier.facts.miles ?? 0;
  if (now >= then || roundedAlike(now, then)) return [];
  const message = `${capital(later.source)} says ${miles(now)}, ${miles(then - now)} fewer than ${earlier.source} said earlier (${miles(then)}). Treat the mileage as not actual until it is explained.`;
  return [{ kind: 'miles-fell', message }];
}

/** "41,000" for 41,237: one of the two is a round figure and the other rounds to it. */
const roundedAlike = (one: number, other: number): boolean =>
  (one % 1000 === 0 && near(one, other)) || (other % 1000 === 0 && near(one, other));
const near = (one: number, other: number): boolean => Math.abs(one - other) < 1000;

const miles = (count: number): string => `${count.toLocaleString('en-US')} miles`;
const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
