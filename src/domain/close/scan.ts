import { SPELLED } from './names.ts';
import { meantWord } from './near-word.ts';
import { plainText } from './plain-text.ts';
import { exactly, takeDates } from './take-dates.ts';
import { takeTimes } from './take-times.ts';
import type { Sign, Token } from './token.ts';
import { takeNamedZones, takeZones, type ZoneWord } from './zone-words.ts';

/** A text in its parts. */
export interface Scanned {
  readonly tokens: readonly Token[];
  /** A word was read although letters of it are wrong. */
  readonly misspelled: boolean;
}

/** Words and signs that change what a time means; the longer ones first. Null stands around a close and changes nothing. */
const WORDS: readonly (readonly [RegExp, Sign | null])[] = [
  [/\b(?:has |have )?not (?:yet )?(?:closed|ended|sold)(?: yet)?\b/g, null],
  [/\b(?:or )?(?:until|unless|if not|before) sold(?: prior| out| before)?\b/g, null],
  [/\bno later than\b|\bless than\b|\bat the latest\b/g, null],
  [/\bor (?:later|after)\b|\bat the earliest\b|\bor so\b/g, 'about'],
  [/\bmore than\b|\bat least\b/g, 'about'],
  [/\b(?:to go|from now|left|remaining|time left)\b/g, 'left'],
  [/\bhammer fell\b/g, 'closed'],
  [/\bextended (?:to|until|till)\b/g, 'extended'],
  [/\bbids? due\b/g, 'closes'],
  [/\bago\b/g, 'ago'],
  [/\b(?:closed|ended|sold|finished)\b/g, 'closed'],
  [/\b(?:closes?|closing|ends?|ending|deadline|expires?)\b/g, 'closes'],
  [/\b(?:opens?|opening|starts?|starting|begins?|beginning|previews?|inspections?|registration)\b/g, 'opens'],
  [
    /\((?:est|estimated|approx)\.?\)|\b(?:about|around|approx(?:imately)?|roughly|circa|ca|estimated|est)\b\.?|[~≈]|-?ish\b/g,
    'about',
  ],
  [/\b(?:to|or|and|until|till|thru|through|between|from)\b|[-/&]/g, 'join'],
  [/\bat\b|@/g, 'at'],
  [
    /\b(?:bidding|bids?|auctions?|sales?|lots?(?! ?\d)|times?|dates?|on|by|the|of|scheduled|for|is|are|was|will|be|it|this|due|sharp|online|live|only|hurry|yet|now|all|a|t|in)\b/g,
    null,
  ],
];

const PARTS: readonly (readonly [RegExp, Token])[] = [
  [/\btonight\b|\bthis evening\b/g, { kind: 'part', part: 'night', today: true }],
  [/\bthis morning\b/g, { kind: 'part', part: 'am', today: true }],
  [/\bthis afternoon\b/g, { kind: 'part', part: 'pm', today: true }],
  [/\b(?:in the |at )?morning\b/g, { kind: 'part', part: 'am', today: false }],
  [/\b(?:in the |at )?(?:afternoon|evening)\b/g, { kind: 'part', part: 'pm', today: false }],
  [/\b(?:at )?night\b/g, { kind: 'part', part: 'night', today: false }],
];

const IN = /\bin(?=\s*[\ue000-\uf8ff])/g;
const STAMP =
  /(\d{4}-\d\d-\d\d|\d{4}-w\d\d-\d|\d{4}-\d{3}|\d{8})t(\d\d):?(\d\d)(?::?(\d\d)(?:[.,]\d+)?)?(z|[+-]\d\d:?\d\d)?/g;
const FIRST_MARK = 0xe000;

/** Finds out what each part of a text stands for. A part is put aside as one character, so that no later rule sees into it. */
export function scan(text: string): Scanned {
  const found: Token[] = [];
  const put = (token: Token): string => {
    found.push(token);
    return String.fromCharCode(FIRST_MARK + found.length - 1);
  };
  const putZone = (word: ZoneWord): string => put({ kind: 'zone', word });
  const { told, misspelled } = spelled(plainText(takeNamedZones(text.replace(/\p{Co}/gu, ' '), putZone)));
  const stamped = told.replace(
    STAMP,
    (_, date: string, hour: string, minute: string, second?: string, zone?: string) => {
      const time = put(exactly(Number(hour), Number(minute), Number(second ?? 0)));
      const offset = zone === undefined ? '' : putZone({ kind: 'offset', minutes: offsetOf(zone) });
      return ` ${date} ${time} ${offset} `;
    },
  );
  const dated = takeDates(stamped, put);
  const hasDay = found.some(({ kind }) => kind === 'date' || kind === 'weekday' || kind === 'relative');
  const zoned = takeZones(dated, putZone);
  const parted = PARTS.reduce((rest, [pattern, token]) => rest.replace(pattern, () => ` ${put(token)} `), zoned);
  const timed = takeTimes(parted, hasDay, put).replace(IN, () => put({ kind: 'left' }));
  const worded = WORDS.reduce(
    (rest, [pattern, kind]) => rest.replace(pattern, () => (kind === null ? ' ' : ` ${put({ kind })} `)),
    timed,
  );
  return { tokens: inOrder(worded, found), misspelled };
}

function inOrder(text: string, found: readonly Token[]): readonly Token[] {
  const parts = text.match(/[\ue000-\uf8ff]|[\p{L}\p{N}$#%+]+/gu) ?? [];
  return parts.map((part) => found[part.charCodeAt(0) - FIRST_MARK] ?? { kind: 'unknown', word: part });
}

function spelled(text: string): { readonly told: string; readonly misspelled: boolean } {
  let misspelled = false;
  const told = text.replace(/[a-z]{5,}/g, (word) => {
    const meant = meantWord(word, SPELLED);
    if (meant === null) return word;
    misspelled = true;
    return meant;
  });
  return { told, misspelled };
}

function offsetOf(text: string): number {
  const [, sign, hours, minutes] = /([+-])(\d\d):?(\d\d)/.exec(text) ?? [];
  const ahead = Number(hours ?? 0) * 60 + Number(minutes ?? 0);
  return sign === '-' ? -ahead : ahead;
}
