import { checkDigitMatches, VIN_CHARACTERS } from './check-digit.ts';
import { type Vin, vinSchema } from './vin.ts';
import { isYearCode } from './vin-year.ts';

/** A VIN that someone may have meant: to be offered with its reason, never applied. */
export interface VinRepair {
  readonly vin: Vin;
  /** Positions that differ, 1 to 17. */
  readonly positions: readonly number[];
  /** "position 5: B for 8". */
  readonly change: string;
  readonly checkDigitMatches: boolean;
}

/** Letters a VIN never holds, and what they are mistaken for. */
const IMPOSSIBLE: Readonly<Record<string, string>> = { I: '1', O: '0', Q: '0' };

/** Characters that look alike in print, in a photo or in handwriting (common practice, no source). */
const LOOK_ALIKE = ['8B3', '5S6', '2Z', '6G', '17LT', '0DU', 'UVY', 'CG', 'EF', 'MNH', 'PRF', '4A9', 'KX', 'VWY', '1J'];

const alike = (a: string, b: string): boolean => LOOK_ALIKE.some((group) => group.includes(a) && group.includes(b));

/** Replaces I, O and Q by the digits they look like; empty when that is not enough to make a VIN. */
export function vinLetterRepairs(tidy: string): readonly VinRepair[] {
  const repaired = [...tidy].map((character) => IMPOSSIBLE[character] ?? character).join('');
  const vin = vinSchema.safeParse(repaired);
  return vin.success && repaired !== tidy ? [repairFrom(tidy, vin.data)] : [];
}

/**
 * Every VIN with a right check digit that is one character away, or two neighbors swapped, from one whose check digit is
 * wrong; the likeliest first: look-alikes, then swaps, then the rest, position 9 last. Empty for a VIN that is right.
 */
export function vinRepairs(vin: Vin): readonly VinRepair[] {
  if (checkDigitMatches(vin)) return [];
  const lookAlikes: Vin[] = [];
  const others: Vin[] = [];
  const swaps: Vin[] = [];
  let ninth: Vin[] = [];
  for (let i = 0; i < 17; i += 1) {
    const found = vin.charAt(i);
    const single = [...VIN_CHARACTERS].filter((c) => c !== found).flatMap((c) => plausible(put(vin, i, c)));
    if (i === 8) ninth = single;
    else for (const candidate of single) (alike(found, candidate.charAt(i)) ? lookAlikes : others).push(candidate);
    const next = vin.charAt(i + 1);
    if (i < 16 && next !== found) swaps.push(...plausible(put(put(vin, i, next), i + 1, found)));
  }
  return [...lookAlikes, ...swaps, ...others, ...ninth].map((candidate) => repairFrom(vin, candidate));
}

/** Keeps a candidate whose check digit is right, whose model-year code exists and whose last four are digits. */
function plausible(text: string): Vin[] {
  const vin = text as Vin; // Made of the characters of a Vin and of VIN_CHARACTERS only.
  return checkDigitMatches(vin) && isYearCode(vin.charAt(9)) && /\d{4}$/.test(vin) ? [vin] : [];
}

const put = (text: string, index: number, character: string): string =>
  text.slice(0, index) + character + text.slice(index + 1);

function repairFrom(before: string, vin: Vin): VinRepair {
  const positions = [...vin].flatMap((character, i) => (before.charAt(i) === character ? [] : [i + 1]));
  const change = positions.map((p) => `position ${p}: ${vin.charAt(p - 1)} for ${before.charAt(p - 1)}`).join(', ');
  return { vin, positions, change, checkDigitMatches: checkDigitMatches(vin) };
}
