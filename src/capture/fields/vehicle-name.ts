/** A car's name taken apart as far as it shows. */
export interface VehicleName {
  readonly year: number;
  readonly make: string;
  readonly model: string;
  /** Words that follow the model and are neither a body nor how it is driven; often empty. */
  readonly trim: string;
  /** Whether the make was one that is known already, and not just the first word. */
  readonly knownMake: boolean;
  /** Whether another split into make and model is as likely. */
  readonly unclear: boolean;
}

const YEAR = /(?<![\p{L}\p{N}$.,/-])(?:((?:19[5-9]|20[0-4])\d)|['’](\d\d))(?![\p{L}\p{N}/]|[.,-]\d)/gu;
/** Headlines that begin with a year and are about something else. */
const NOT_A_CAR =
  /\b(?:sales?|auctions?|events?|annual|calendar|results?|schedule|season|edition|terms|conditions|report|holiday|holidays|rights reserved|special|clearance|inventory|listings?|vehicles|trucks|vans|cars|units|lots|fleet list|dealers?|exchange|wholesale|mower|tractor|trailer|jan|feb|mar|apr|may|jun|jul|aug|sep|sept|oct|nov|dec|january|february|march|april|june|july|august|september|october|november|december|at|on|the|and|or|fees?|rates?|am|pm)\b/i;
/** Where a name ends. */
const END =
  /^(?:with|in|for|at|by|from|on|near|and|w\/|vin|lot|run|item|stock|stk|is|was|has|sold|offered|ends?|closes?|mi|miles|km|trim|series|located|having|showing|unit|no|sister|went|made|bid)$/i;
const DRIVE = /^(?:4[x×][24]|6[x×][246]|4wd|2wd|awd|fwd|rwd)$/i;
/** Words of bodies, cabs and lengths, which belong to the model as pages print it. */
const BODY =
  /^(?:crew|double|extended|ext|regular|reg|quad|king|super|mega|access|cab|cargo|passenger|cutaway|chassis|box|flatbed|dump|utility|service|stake|body|bed|long|short|high|low|mid|medium|roof|lwb|swb|elwb|drw|srw|dually|dual|van|pickup|truck|wagon|sedan|coupe|hatch|hatchback|suv|minivan|bus|electric|hybrid|diesel|tray|top|step|panel|reefer|plow|work|max|ii|iii|iv)$/i;
const CODE = /^(?:\d\.\d|\d{1,4}[A-Z]{0,3}|[A-Z]\d{1,4}[A-Z]?|[A-Z]|HD|[A-Z]{1,2}-\d{1,4})$/;

/**
 * Reads `2021 Larkspur Hauler 250 Crew Cab`, `Hauler 250 (2021)` with a known make before it, `'21 Larkspur Hauler`. `newest`
 * is the latest model year that can be; `makes` are makes that are known, so that one of several words is recognized. Null
 * when it does not read as a car.
 */
export function readVehicleName(text: string, newest: number, makes: readonly string[]): VehicleName | null {
  if (text.length > 1500) return null;
  for (const match of text.matchAll(YEAR)) {
    const year = match[1] === undefined ? century(Number(match[2]), newest) : Number(match[1]);
    if (year > newest) continue;
    const after = nameFrom(text.slice(match.index + match[0].length), makes);
    const before = after === null ? nameBefore(text.slice(0, match.index), makes) : null;
    const name = after ?? before;
    if (name !== null) return { year, ...name };
  }
  return null;
}

const century = (short: number, newest: number): number => {
  const this100 = newest - (newest % 100) + short;
  return this100 > newest ? this100 - 100 : this100;
};

/** Make, model and trim at the start of a text. */
export function nameFrom(text: string, makes: readonly string[]): Omit<VehicleName, 'year'> | null {
  const start = /^[\s,]{1,3}(?=\p{Lu}|\d)/u.exec(text);
  if (start === null) return null;
  return split(wordsOf(text.slice(start[0].length)), makes);
}

const YEAR_WORD = /[ ,]+(?:model year|year|jahrgang|baujahr|année|año):? ?$/i;

/** A name that stands before its year: `Ostrander Trestle LWB (2021)`, `Larkspur Hauler 150, 2015`. */
function nameBefore(text: string, makes: readonly string[]): Omit<VehicleName, 'year'> | null {
  const told =
    /((?:\p{Lu}[\p{L}\p{N}&'’.-]*|\d{1,4})(?: (?:\p{Lu}[\p{L}\p{N}&'’.-]*|\d{1,4}[A-Z]{0,2})){1,4})[ ,]*\(?$/u.exec(
      text.replace(YEAR_WORD, ''),
    )?.[1];
  if (told === undefined) return null;
  const known = makes.find((make) => told.toLowerCase().includes(`${make.toLowerCase()} `));
  const bracketed = /\($/.test(text) || YEAR_WORD.test(text);
  if (known === undefined && !bracketed) return null;
  const from = known === undefined ? 0 : told.toLowerCase().indexOf(known.toLowerCase());
  return split(told.slice(from).split(' '), makes);
}

/** The words that can belong to a name, up to the first that can't. */
function wordsOf(text: string): readonly string[] {
  const words: string[] = [];
  const shout = text === text.toUpperCase();
  for (const raw of text.slice(0, 200).split(/\s+/)) {
    const word = raw.replace(/[,;:.)]+$/, '');
    if (raw === '&' && words.length > 0) {
      words.push(raw);
      continue;
    }
    if (word === '' || /^[(|·•–—\-/‹›*"“]/.test(raw) || END.test(word)) break;
    if (/^[A-HJ-NPR-Z0-9]{17}$/i.test(word) || /^\$|^\d{1,3},\d{3}/.test(word) || /^\d{5,}/.test(word)) break;
    if (!/^(?:\p{Lu}|\d)/u.test(word) && !(words.length > 0 && /^[a-z]+\d|^de$|^du$/.test(word))) break;
    if (!shout && /^\p{Ll}/u.test(word)) break;
    words.push(word);
    if (word !== raw || words.length >= 9) break;
  }
  return words;
}

function split(words: readonly string[], makes: readonly string[]): Omit<VehicleName, 'year'> | null {
  const whole = words.join(' ');
  const lower = `${whole.toLowerCase()} `;
  const known = makes
    .filter((make) => lower.startsWith(`${make.toLowerCase()} `))
    .sort((a, b) => b.length - a.length)[0];
  if (words.length === 0 || !/^\p{L}[\p{L}\p{N}&'’.-]*$/u.test(words[0] ?? '') || (words[0] ?? '').length < 2)
    return null;
  const makeWords = known !== undefined ? known.split(' ').length : words[1] === '&' ? 3 : 1;
  const make = words.slice(0, makeWords).join(' ');
  const rest = words.slice(makeWords).filter((word) => !DRIVE.test(word));
  if (NOT_A_CAR.test(known === undefined ? whole : rest.join(' '))) return null;
  const end = modelEnd(rest);
  const model = rest.slice(0, end).join(' ');
  const trim = rest.slice(end).join(' ');
  if (make.length > 40 || model.length > 80) return null;
  return {
    make,
    model,
    trim: /\p{L}/u.test(trim) ? trim : '',
    knownMake: known !== undefined,
    unclear: known === undefined && isUnclear(rest),
  };
}

/** Whether words behind a name are its number, or the body and length of it, and not a trim's. */
export const belongToModel = (words: string): boolean =>
  words.split(' ').every((word) => BODY.test(word) || CODE.test(word) || DRIVE.test(word));

/** How many words are the model: its name, its number, and the words of its body. */
function modelEnd(words: readonly string[]): number {
  const number = words.findIndex(
    (word, at) => at > 0 && at <= 2 && CODE.test(word) && words.slice(1, at).every((one) => !BODY.test(one)),
  );
  let end = Math.max(1, number + 1);
  while (end < words.length && CODE.test(words[end] ?? '')) end++;
  // Words of a body end the name; among other words they are the name of a trim.
  return words.slice(end).every((word) => BODY.test(word) || CODE.test(word))
    ? words.length
    : Math.min(end, words.length);
}

/** Three words without a number may as well be a make of two words. */
const isUnclear = (rest: readonly string[]): boolean =>
  rest.length >= 2 && !CODE.test(rest[1] ?? '') && !BODY.test(rest[1] ?? '') && !CODE.test(rest[0] ?? '');
