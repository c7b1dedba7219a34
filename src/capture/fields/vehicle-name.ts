/** A car's name taken apart as far as it shows: the words after the year are make and model, in that order. */
export interface VehicleName {
  readonly year: number;
  readonly make: string;
  readonly model: string;
  /** Whether the make was one that is known already, and not just the first word. */
  readonly knownMake: boolean;
}

const YEAR = /(?:^|[\s:([|#–—-])((?:19[5-9]|20[0-4])\d)[ ,]+(?=\p{Lu})/u;
// A sentence about a car is not its name.
const SENTENCE_BEFORE =
  /\b(?:an?|the|my|our|your|this|that|his|her|for|of|in|since|from|than|about|saw|bought|sold|like)\s*$/i;
// Headlines that begin with a year and are about something else.
const NOT_A_CAR =
  /\b(?:sale|sales|auction|auctions|event|annual|calendar|results?|schedule|season|edition|terms|conditions|report|holiday|holidays|rights reserved|special|clearance|inventory|listings?|vehicles|trucks|vans|cars|units|lots|jan|feb|mar|apr|may|jun|jul|aug|sep|sept|oct|nov|dec|january|february|march|april|june|july|august|september|october|november|december)\b/i;

/**
 * Reads `2021 Larkspur Hauler 250 Crew Cab`. `newest` is the latest model year that can be; `makes` are makes that the
 * user's other lots have, so that one of several words is recognized. Null when it does not read as a car.
 */
export function readVehicleName(text: string, newest: number, makes: readonly string[]): VehicleName | null {
  if (text.length > 200) return null;
  const found = YEAR.exec(text);
  const year = Number(found?.[1]);
  if (found === null || year > newest || SENTENCE_BEFORE.test(text.slice(0, found.index + 1))) return null;
  const rest = text
    .slice(found.index + found[0].length)
    // A VIN or an odometer on the same line ends the name.
    .split(
      / [A-HJ-NPR-Z0-9]{17}\b| \d{1,3}(?:,\d{3})? ?(?:mi|miles|km)\b|\s[|•·–—-]\s|[|•·(;,\n]| VIN\b| Lot\b| (?:in|with|for|at|by|from|on|near)\b/,
      1,
    )[0]
    ?.trim();
  if (rest === undefined || rest === '' || NOT_A_CAR.test(rest)) return null;
  const known = makes.find((make) => rest.toLowerCase().startsWith(`${make.toLowerCase()} `));
  const make = known === undefined ? (rest.split(' ')[0] ?? '') : rest.slice(0, known.length);
  const model = rest.slice(make.length).trim();
  if (!/^\p{L}[\p{L}\p{N}&'.-]*$/u.test(make.replace(/ /g, '')) || make.length > 40 || model.length > 80) return null;
  return { year, make, model, knownMake: known !== undefined };
}
