import { fieldWords } from './field-words.ts';
import { valueInWords } from './value-words.ts';

/** Between which figures dealers mean what a field says. Outside of it the unit is usually wrong: dollars for cents. */
export interface Usual {
  readonly least: number;
  readonly most: number;
  /** Whether nothing at all is an ordinary answer, as for a cost that somebody does not have. */
  readonly none?: true;
}

/** Why a figure is probably not what was meant, in two or three sentences; undefined where nothing is odd. */
export interface Unlikely {
  readonly message: string;
  /** How a setup file writes such a figure, for somebody who wrote one by hand. */
  readonly inFile?: string;
}

const CENTS_IN_FILE = 'A setup file has whole cents: $300 is 30000.';
const PPM_IN_FILE = 'A setup file has parts per million: 8% is 80000.';

/**
 * @param key the field's key in the setup, which says its unit
 * @param what the figure in words, where the key's own words would not say enough
 */
export function unlikely(key: string, value: number | undefined, usual: Usual, what?: string): readonly Unlikely[] {
  if (value === undefined || (value === 0 && usual.none)) return [];
  if (value >= usual.least && value <= usual.most) return [];
  const words = what ?? capital(fieldWords(key));
  const size = value < usual.least ? 'small' : 'large';
  const inFile = /^cents|Cents/.test(key) ? CENTS_IN_FILE : key.endsWith('Ppm') ? PPM_IN_FILE : undefined;
  const message = `${words} is ${valueInWords(key, value)}. That is too ${size} to be meant. Check it.`;
  return [inFile === undefined ? { message } : { message, inFile }];
}

const capital = (words: string): string => `${words.charAt(0).toUpperCase()}${words.slice(1)}`;
