import { checkDigitMatches } from '../../domain/vin/check-digit.ts';
import { readVin } from '../../domain/vin/read-vin.ts';
import type { Vin } from '../../domain/vin/vin.ts';

const TOKEN = /(?<![\p{L}\p{N}])[A-HJ-NPR-Z0-9]{17}(?![\p{L}\p{N}])/giu;
const ANY_CASE = /(?<![\p{L}\p{N}])[A-HJ-NPR-Z0-9]{17}(?![\p{L}\p{N}])/iu;
/** Printed in groups with blanks or dashes: 5XQ 2B7 …, 5XQ-2B7-…. */
const GROUPED = /(?<![\p{L}\p{N}])[A-HJ-NPR-Z0-9]{1,9}(?:[ -][A-HJ-NPR-Z0-9]{1,9}){1,8}(?![\p{L}\p{N}])/gu;

/**
 * VINs that stand in running text without a label. One in eleven random codes of this length has a right check digit, so
 * more is asked: letters as well as digits, and digits at the end, as cars of the US market have.
 */
export function bareVins(text: string): readonly Vin[] {
  if (text.length < 17 || !/\d/.test(text)) return [];
  const found = new Set<Vin>();
  for (const [token] of text.matchAll(TOKEN)) {
    const vin = readVin(token);
    if (vin.ok && isPlausible(vin.value)) found.add(vin.value);
  }
  if (found.size === 0 && text.length <= 400) for (const vin of groupedVins(text)) found.add(vin);
  return [...found];
}

function groupedVins(text: string): readonly Vin[] {
  const found: Vin[] = [];
  for (const [run] of text.matchAll(GROUPED)) {
    const groups = run.split(/[ -]/);
    for (let from = 0; from < groups.length; from++) {
      let joined = '';
      for (const group of groups.slice(from)) {
        joined += group;
        if (joined.length >= 17) break;
      }
      const vin = joined.length === 17 ? readVin(joined) : undefined;
      if (vin?.ok === true && isPlausible(vin.value)) found.push(vin.value);
    }
  }
  return found;
}

function isPlausible(vin: Vin): boolean {
  return checkDigitMatches(vin) && /\d{4}$/.test(vin) && /[A-Z].*[A-Z]/.test(vin);
}

/** The VIN in a value that the page itself calls one, however it is broken up; null when there is none. */
export function labeledVin(value: string): Vin | null {
  const token = ANY_CASE.exec(value.slice(0, 200))?.[0];
  const whole = readVin(token ?? value.slice(0, 60));
  return whole.ok ? whole.value : firstSeventeen(value);
}

/** Groups that make up a VIN at the start of a value, with something else after: `5XQ 2B7… (copy)`. */
function firstSeventeen(value: string): Vin | null {
  let characters = '';
  for (const group of value.slice(0, 80).split(/[\s-]+/)) {
    if (!/^[A-HJ-NPR-Z0-9]+$/i.test(group)) break;
    characters += group;
    if (characters.length === 17) {
      const vin = readVin(characters);
      return vin.ok && checkDigitMatches(vin.value) ? vin.value : null;
    }
  }
  return null;
}

/**
 * Positions (1 to 17) of letters that only look Latin in something that is meant to be a VIN; empty when there are none.
 * Such a text is never turned into a VIN: whoever wrote it may have meant another car.
 */
export function lookAlikePositions(value: string): readonly number[] {
  const characters = [...(value.trim().split(/\s/, 1)[0] ?? '')];
  if (characters.length !== 17) return [];
  const foreign = characters.flatMap((character, at) =>
    /^[\p{L}\p{N}]$/u.test(character) && !/^[A-Za-z0-9]$/.test(character) ? [at + 1] : [],
  );
  return foreign.length < 17 ? foreign : [];
}
