import type { Vin } from './vin.ts';

/** Position 10 for 1980 onward, and again for 2010 onward. 49 CFR 565.15, Table VII. */
const YEAR_CODES = 'ABCDEFGHJKLMNPRSTVWXY123456789';

/**
 * What the seventh-position rule needs to know. `light`: a passenger car, or a multipurpose vehicle or truck of a gross
 * vehicle weight rating of 10,000 lb or less. `heavy`: heavier, or a bus, motorcycle or trailer.
 */
export type VinWeight = 'light' | 'heavy' | 'unknown';

export interface ModelYear {
  /** Every year it can be, the likelier first; empty when position 10 is no year code (a car of another market). */
  readonly candidates: readonly number[];
  /** Whether the VIN alone settles it. */
  readonly certain: boolean;
}

/** Whether a character can stand for a model year: never I, O, Q, U, Z or 0. */
export const isYearCode = (character: string): boolean => character !== '' && YEAR_CODES.includes(character);

/**
 * The model year that positions 7 and 10 say. For light vehicles a digit in position 7 means 1980 to 2009 and a letter
 * 2010 to 2039 (note to Table VII of 49 CFR 565.15). For heavy ones, and when the weight is not known, both stay possible
 * and neither is forced; when unknown, the one that the rule for light vehicles gives comes first.
 * @param thisYear the calendar year now; a model year more than two ahead has not been made yet and is dropped
 */
export function modelYearOf(vin: Vin, weight: VinWeight, thisYear: number): ModelYear {
  const index = YEAR_CODES.indexOf(vin.charAt(9));
  if (index < 0) return { candidates: [], certain: false };
  const early = 1980 + index;
  const late = early + 30;
  const byRule = /\d/.test(vin.charAt(6)) ? early : late;
  const inOrder = byRule === early ? [early, late] : [late, early];
  const made = (weight === 'heavy' ? [early, late] : inOrder).filter((year) => year <= thisYear + 2);
  if (weight === 'light' && made.includes(byRule)) return { candidates: [byRule], certain: true };
  // A rule that gives a year not yet made was broken somewhere: say the other one, without certainty.
  return { candidates: made, certain: weight !== 'light' && made.length === 1 };
}
