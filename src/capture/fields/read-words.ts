import type { Candidates } from '../draft/candidates.ts';
import { canNameFact, labelRoles } from '../roles/label-roles.ts';
import type { FactRole } from '../roles/label-rules.ts';
import { clauseBefore } from '../text/clause.ts';
import type { Line } from '../text/lines.ts';
import { type Pair, pairText } from '../text/pair.ts';
import { placesIn } from '../tokens/places.ts';
import { driveIn, gearboxIn, isBareTitle, isTitleStatement, isTitleWord } from '../tokens/word-shapes.ts';
import type { FieldReader } from './field-reader.ts';
import { isPlainValue } from './plain-value.ts';

type WordField = 'location' | 'seller' | 'title' | 'transmission' | 'drive' | 'sale' | 'venueName';

const MOST_WORDS: Readonly<Record<WordField, number>> = {
  location: 120,
  seller: 100,
  title: 140,
  transmission: 80,
  drive: 60,
  sale: 100,
  venueName: 80,
};
const FIELDS = Object.keys(MOST_WORDS) as WordField[];

/** Facts that are words: by their label, or where their form gives them away. */
export const readWords: FieldReader = ({ pairs, factLines, extent, shared }, into) => {
  for (const pair of pairs) for (const field of FIELDS) readLabelled(field, pair, into);
  for (const pair of pairs) readShaped(pair, into);
  for (const { text, element, prose } of factLines) {
    if (text.length > 1500) continue;
    readInLine(text, prose ? 0.9 : 1, extent === 'card', (field, value, score) =>
      into.add(field, { value, from: 'page-text', text, score }, element),
    );
  }
  for (const { text, element, prose } of factLines) {
    if (text.length > 1500) continue;
    for (const [field, value, score] of sentencesIn(text)) {
      into.add(field, { value, from: 'page-text', text, score: score * (prose ? 0.95 : 1) }, element);
    }
  }
  if (extent === 'card' && into.of('location').every((one) => one.score < 0.5)) sharedPlace(shared.lines, into);
};

/** Where all the lots of a list are, or those under one heading, said nearest above them. */
function sharedPlace(lines: readonly Line[], into: Candidates): void {
  for (const { text, heading, element } of lines.slice(0, 60)) {
    if (text.length > 400 || ADDRESS.test(text)) continue;
    const [first, second] = placesIn(text);
    if (first === undefined || second !== undefined) continue;
    const here = HERE.test(clauseBefore(text.slice(0, first.start)));
    const group = heading > 1 || element.tag === 'th' || element.tag === 'caption';
    into.add(
      'location',
      { value: first.place, from: 'page-text', text, score: here ? 0.74 : group ? 0.72 : 0.4 },
      element,
    );
    return;
  }
}

function readLabelled(field: WordField, pair: Pair, into: Candidates): void {
  const { fact, money } = labelRoles(pair.label);
  const weight = fact.get(field as FactRole) ?? 0;
  if (weight === 0 || (fact.get('other') ?? 0) > weight) return;
  if (!canNameFact(pair.label, pair.value) && (field !== 'location' || money.size > 0)) return;
  const value = field === 'location' ? pair.value : (pair.value.split('\n')[0] ?? '');
  const read = wordsOf(field, value, pair);
  if (read === null) return;
  // `Clean / branded: Clean` is a choice of which nobody knows whether it was made.
  const chosen = /[/|]/.test(pair.label) && pair.label.toLowerCase().includes(read.value.toLowerCase()) ? 0.4 : 1;
  const score = chosen * read.score * weight * (pair.prose ? 0.75 : 1) * (pair.how === 'caption' ? 0.95 : 1);
  into.add(field, { value: read.value, from: pair.from, text: pairText(pair), score }, pair.node);
}

function wordsOf(
  field: WordField,
  value: string,
  pair: Pair,
): { readonly value: string; readonly score: number } | null {
  if (field === 'location') return placeOf(value);
  const plain = sentence(value)
    .replace(/(?<!\b\p{Lu}\p{Ll}{1,3})[.,;]$/u, '')
    .trim();
  if (!isPlainValue(plain, MOST_WORDS[field])) return null;
  if (field === 'title') {
    const statement =
      isTitleStatement(plain) || FEW_WORDS.test(plain) || /status|brand|type|document|history|info/i.test(pair.label);
    // Choices to tick, or something that is meant for a program: shown, but not to be relied on.
    const odd = /[<>{}]|^[^/:]{2,20} ?\/ ?[^/:]{2,20}:/.test(plain);
    return statement && !/\b(?:19|20)\d\d [A-Z]/.test(plain) ? { value: plain, score: odd ? 0.4 : 0.95 } : null;
  }
  if (field === 'drive')
    return driveIn(plain) === null && /\d{3}|\$/.test(plain)
      ? null
      : { value: plain, score: driveIn(plain) === null ? 0.7 : 0.95 };
  if (field === 'transmission') return { value: plain, score: gearboxIn(plain) === null ? 0.6 : 0.95 };
  if (field === 'sale' && /, \p{Ll}/u.test(plain))
    return { value: plain.split(/, (?=\p{Ll})/u, 1)[0] ?? plain, score: 0.9 };
  if ((field === 'sale' || field === 'seller' || field === 'venueName') && /\$ ?\d|^\d+$|^\d{1,2}[/:]/.test(plain))
    return null;
  return { value: plain, score: /on request|withheld|undisclosed|private|confidential/i.test(plain) ? 0.4 : 0.93 };
}

/** A word or three, of which only the first is written large: a state of papers in any language, and no headline. */
const FEW_WORDS = /^\p{Lu}?\p{Ll}+(?: \p{Ll}+){0,2}$/u;

/** The first of several sentences; what follows is about something else. */
const sentence = (value: string): string => value.split(/(?<=[\p{Ll})]{2})\.\s+(?=\p{Lu})/u, 1)[0] ?? value;

const MAP_LINKS = /^(?:view|see|show|open)? ?(?:on )?(?:a )?(?:map|directions|details|more|info)\.?$/i;

/** The town of an address; without one the words as they stand. */
function placeOf(value: string): { readonly value: string; readonly score: number } | null {
  const whole = value
    .split('\n')
    .filter((line) => !MAP_LINKS.test(line))
    .slice(0, 3)
    .map((line) => line.replace(/[,.]$/, ''))
    .join(', ');
  if (!isPlainValue(whole, MOST_WORDS.location) || !/\p{L}{2}/u.test(whole)) return null;
  const [place] = placesIn(whole, true);
  if (place !== undefined) return { value: place.place, score: 0.94 };
  return /\d{3}-\d{4}|\$|\d{1,2}:\d\d/.test(whole) ? null : { value: whole, score: 0.8 };
}

/** A value whose form is that of one field, beside a word that says nothing. */
function readShaped(pair: Pair, into: Candidates): void {
  const { fact, money, time } = labelRoles(pair.label);
  if (fact.size > 0 || money.size > 0 || time.size > 0 || pair.prose || pair.how === 'colon') return;
  const value = (pair.value.split('\n')[0] ?? '').trim();
  if (value.length > 60) return;
  const add = (field: 'drive' | 'transmission' | 'location' | 'title', said: string, score: number) =>
    into.add(field, { value: said, from: pair.from, text: pairText(pair), score }, pair.node);
  if (driveIn(value)?.length === value.length) add('drive', value, 0.8);
  if (gearboxIn(value)?.length === value.length) add('transmission', value, 0.78);
  const [place] = placesIn(value);
  if (place !== undefined && place.place.length >= value.length - 2) add('location', place.place, 0.8);
  if (isBareTitle(value)) add('title', value, 0.78);
  else if (pair.how === 'head' && isTitleWord(value)) add('title', value, 0.7);
}

type Put = (field: 'drive' | 'transmission' | 'location' | 'title', value: string, score: number) => void;

/** What stands in a line without any label. */
function readInLine(text: string, factor: number, card: boolean, put: Put): void {
  for (const part of text.split(/ [-–—|•·*/] |[|•·;]|, |\. |\n/u).slice(0, 60)) {
    const bare = part.trim().replace(/[.,]$/, '');
    if (bare.length > 60) continue;
    if (isBareTitle(bare)) put('title', bare, 0.75 * factor);
    else if (card && isTitleWord(bare)) put('title', bare, 0.6 * factor);
    const gearbox = gearboxIn(bare);
    if (gearbox !== null && gearbox.length >= bare.length - 14 && !/^auto$/i.test(bare))
      put('transmission', gearbox, 0.75 * factor);
    else if (/^auto$/i.test(bare)) put('transmission', bare, 0.6 * factor);
  }
  const drive = driveIn(text);
  if (drive !== null && text.length < 400) put('drive', drive, 0.74 * factor);
  if (ADDRESS.test(text)) return;
  for (const { place: said, start: from } of placesIn(text).slice(0, 4)) {
    // `Location Chalk Fork, KS`: the label is no part of the town.
    const label = /^\p{L}+ (?=\p{Lu})/u.exec(said)?.[0] ?? '';
    const named = label.length > 3 && labelRoles(label.trim()).fact.has('location');
    const [place, start] = named ? [said.slice(label.length), from + label.length] : [said, from];
    const before = clauseBefore(text.slice(0, start));
    const alone = start === 0 || /[·•|–—/-]\s*$/.test(text.slice(Math.max(0, start - 3), start));
    // Alone in a line it may as well be where the sale is.
    const beside = card || DISTANCE.test(text) || /\blot\b|\bitem\b/i.test(text);
    put('location', place, (HERE.test(before) ? 0.84 : alone && beside ? 0.76 : 0.45) * factor);
  }
}

const DISTANCE = /\d ?(?:mi|miles|km)\b/i;
const HERE =
  /\b(?:at|in|is at|is in|sits(?: in| at)?|parked(?: in| at)?|located(?: in| at)?|stands(?: in| at)?|kept(?: in| at)?|from|seen (?:at|in)|units in|pier in|location:?|lieu|yard|emplacement|ubicación)(?: the| our| its| their)?$/i;
/** Lines with the sale's own address, telephone or rights. */
const ADDRESS =
  /©|\(c\) \d|\b(?:since \d{4}|est\.? \d{4}|p\.?o\.? box|suite \d|street|avenue|blvd|phone|tel|office|haul|ship|transport|truck to|licensed|dealers only|trade only|dealer trade)\b|\d{3}[-.]\d{3}[-.]\d{4}|\d{3}-\d{4}\b/i;

const NAME = String.raw`((?:the )?\p{Lu}[\p{L}\p{N}&'’.-]*(?: (?:&|of|and|the|de|du|\p{Lu}[\p{L}\p{N}&'’.-]*|\d+))*)`;
const SELLER = new RegExp(
  String.raw`\b(?:offered by|consigned by|sold by|put in by|on behalf of|consignor is|seller is|(?:comes|came) (?:to us )?from|consigned to us by|vendu par|vendido por) ${NAME}`,
  'iu',
);
const TITLE_IS =
  /\b(?:title|certificate|papers) (?:is|are|shows?|reads?) ((?:clean|clear|rebuilt|salvage|branded|bonded|reconstructed)(?: and clear)?)\b/iu;
const TITLE_OF =
  /(?<![\p{L}-])((?:clean|clear|rebuilt|salvage|branded|bonded|reconstructed|repossession)(?: [A-Z]{2})?) title\b/iu;
const GEARBOX_IN_SENTENCE =
  /\b(?:an?|the|with|through an?|its) ((?:\d{1,2}|five|six|seven|eight|nine|ten)[- ]?speed (?:automatic|manual|auto))\b|(?<![\p{L}-])(automatic|manual) (?:transmission|gearbox)/iu;

/** Facts that running text tells in the usual words. */
function sentencesIn(text: string): readonly (readonly ['seller' | 'title' | 'transmission', string, number])[] {
  const seller = SELLER.exec(text)?.[1]?.replace(/[.,]$/, '');
  const is = TITLE_IS.exec(text)?.[1];
  const of = is === undefined ? TITLE_OF.exec(text)?.[0] : undefined;
  const gearbox = GEARBOX_IN_SENTENCE.exec(text);
  const geared = gearbox?.[1] ?? gearbox?.[2];
  return [
    ...(seller === undefined ? [] : [['seller', seller, 0.84] as const]),
    ...(is === undefined ? [] : [['title', is, 0.66] as const]),
    ...(of === undefined || isBareTitle(text) ? [] : [['title', of, 0.6] as const]),
    ...(geared === undefined ? [] : [['transmission', geared, 0.8] as const]),
  ];
}
