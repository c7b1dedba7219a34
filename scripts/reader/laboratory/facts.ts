import type { Dice } from '../dice.ts';
import type { PlainLot } from '../plain-lot.ts';
import type { InventedLot } from './invented-lot.ts';
import type { LotField, Speech } from './voice.ts';

/** One thing that a page says of a lot. */
export interface Fact {
  readonly field: LotField;
  readonly label: string;
  /** As markup: figures may be set in parts. */
  readonly value: string;
}

/** What a page says of one lot, and what a careful person reads of it. */
export interface ToldLot {
  readonly lot: InventedLot;
  readonly name: string;
  readonly facts: readonly Fact[];
}

/** What nearly every page says, and what only some do. */
const ALWAYS: readonly LotField[] = ['vin', 'miles', 'priceNow', 'close', 'lotNumber'];
const OFTEN: readonly LotField[] = ['title', 'location', 'drive', 'transmission', 'trim', 'nextBid'];
const SOMETIMES: readonly LotField[] = ['increment', 'buyNow', 'runNumber', 'seller', 'condition'];

/** The fields that all lots of a page are told with. */
export function toldFields(dice: Dice, inList: boolean): readonly LotField[] {
  const some = (fields: readonly LotField[], chance: number) => fields.filter(() => dice.happens(chance));
  const more = [...some(OFTEN, inList ? 0.45 : 0.8), ...some(SOMETIMES, inList ? 0.15 : 0.5)];
  return [...ALWAYS.filter((field) => field !== 'lotNumber' || dice.happens(0.9)), ...dice.shuffled(more)];
}

export function tell(
  lot: InventedLot,
  fields: readonly LotField[],
  speech: Speech,
  zone: string,
  now: number,
): ToldLot {
  const value = (field: LotField): string => {
    if (field === 'close') return speech.moment(lot.closes, zone, now);
    if (field === 'miles') return speech.miles(lot.miles);
    if (field === 'priceNow' || field === 'nextBid' || field === 'increment' || field === 'buyNow')
      return speech.money(lot[field]);
    return escaped(lot[field]);
  };
  return {
    lot,
    name: escaped(`${lot.year} ${lot.make} ${lot.model}`),
    facts: fields.map((field) => ({ field, label: speech.label(field), value: value(field) })),
  };
}

/**
 * What a careful person reads of a lot whose page says these of it. Where a make of two words ends nobody can know who never
 * heard of it.
 */
export function careful({ lot, facts }: ToldLot, shared: PlainLot, knowsMakes: boolean): PlainLot {
  const { year, make, model } = lot;
  const said = facts.map(({ field }): [string, string | number] =>
    field === 'close' ? ['close', new Date(lot.closes).toISOString().replace('.000Z', 'Z')] : [field, lot[field]],
  );
  const told = { year, ...Object.fromEntries(said), ...shared };
  return knowsMakes || /^\S+$/.test(make) || make.includes('&')
    ? { make, model, ...told }
    : { ...told, unsettled: ['make', 'model', ...('trim' in told ? [] : ['trim'])] };
}

export const escaped = (text: string): string =>
  text.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('"', '&quot;');

/** A value without its markup, for where only text can stand. */
export const bareText = (markup: string): string =>
  markup
    .replace(/<sup>\d+<\/sup>/g, '')
    .replace(/<[^>]+>/g, '')
    .replaceAll('\u202f', ' ');
