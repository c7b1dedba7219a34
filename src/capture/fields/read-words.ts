import type { Candidates } from '../draft/candidates.ts';
import { cleanLine } from '../text/clean-text.ts';
import { type Meaning, meaningOf } from '../text/labels.ts';
import type { Line } from '../text/lines.ts';
import { isSetApart, type Pair, pairText } from '../text/pair.ts';

type WordField = 'location' | 'seller' | 'title' | 'transmission' | 'drive' | 'sale' | 'venueName' | 'trim';

const MOST_WORDS: Readonly<Record<WordField, number>> = {
  location: 100,
  seller: 100,
  title: 140,
  transmission: 80,
  drive: 60,
  sale: 100,
  venueName: 80,
  trim: 80,
};

/** Facts that are plain words: taken only where the page sets them apart from their label. */
export function readWords(pairs: readonly Pair[], lines: readonly Line[], into: Candidates): void {
  for (const pair of pairs) {
    if (!isSetApart(pair)) continue;
    const field = WORD_FIELDS[pair.meaning];
    if (field === undefined) continue;
    const value = field === 'location' ? placeIn(pair.value) : (pair.value.split('\n')[0] ?? '');
    if (!isPlainValue(value, MOST_WORDS[field])) continue;
    if (field === 'title' && !isTitleStatement(value, pair.label)) continue;
    into.add(field, {
      value,
      from: pair.from,
      text: pairText(pair),
      sure: pair.how === 'caption' ? 'likely' : 'certain',
    });
  }
  readBareTitle(lines, into);
  readCondition(pairs, into);
}

const WORD_FIELDS: Partial<Record<Meaning, WordField>> = {
  location: 'location',
  seller: 'seller',
  title: 'title',
  transmission: 'transmission',
  drive: 'drive',
  sale: 'sale',
  venueName: 'venueName',
  trim: 'trim',
};

const MAP_LINKS = /^(?:view|see|show|open)? ?(?:on )?(?:a )?(?:map|directions|details|more|info)\.?$/i;

/** An address over up to three lines, without the link to a map. */
function placeIn(value: string): string {
  return value
    .split('\n')
    .filter((line) => !MAP_LINKS.test(line))
    .slice(0, 3)
    .map((line) => line.replace(/,$/, ''))
    .join(', ');
}

/** Words that begin like the middle of a sentence, stand for nothing, or are a label of their own are no value. */
export function isPlainValue(value: string, longest: number): boolean {
  if (value === '' || value.length > longest || !/[\p{L}\p{N}]/u.test(value)) return false;
  if (/^(?:(?:log|sign) ?in|login|register|click|contact|call|upgrade|subscribe)\b/i.test(value)) return false;
  if (/^(?:is|are|was|were|will|has|have|of|to|at|and|or|by|if|may|must|can)\b/.test(value)) return false;
  if (
    /^(?:n\/?a|none listed|not (?:available|listed|specified|provided|stated)|unknown|see below|tbd|tba|-+|select.*)$/i.test(
      value,
    )
  )
    return false;
  return meaningOf(value) === undefined;
}

const TITLE_WORDS =
  /\b(?:clean|clear|salvage|rebuilt|rebuildable|reconstructed|branded|brand|lemon|buyback|flood|fire|hail|junk|non-?repairable|certificate|bonded|lien|absent|attached|present|in hand|title|theft|export|repossession|bill of sale|odometer|tmu|not actual|limpio|salvamento|blanchi?|propre)\b/i;

/** "Title" heads many things, a job or a listing's headline among them; a status or brand is never in doubt. */
function isTitleStatement(value: string, label: string): boolean {
  if (/status|brand|type|document|history|info/i.test(label) && !/\b(?:19|20)\d\d\b/.test(value)) return true;
  return TITLE_WORDS.test(value);
}

const BARE_TITLE =
  /^(?:actual )?(?:[\p{Lu}]{2} )?(?:clean|clear|salvage|rebuilt|reconstructed|branded|flood|junk|lemon law|bonded|non-?repairable)(?: [\p{L}]+)? (?:title|certificate)(?: [-–(].{1,40})?$/iu;

/** `Salvage title` alone on a line or between marks, without any label. */
function readBareTitle(lines: readonly Line[], into: Candidates): void {
  for (const line of lines) {
    if (line.text.length > 200) continue;
    for (const part of line.text.split(/ [-–—|•·] |[|•·,;]|\.$/).map((text) => text.trim())) {
      if (part.length > 60 || !BARE_TITLE.test(part)) continue;
      into.add('title', { value: part, from: 'page-text', text: line.text, sure: line.prose ? 'doubtful' : 'likely' });
    }
  }
}

const CONDITION_LENGTH = 1900;

/** Everything that the page says under condition, damage, announcements and the like, each under its own label. */
function readCondition(pairs: readonly Pair[], into: Candidates): void {
  const parts: { label: string; value: string }[] = [];
  for (const pair of pairs) {
    if (pair.meaning !== 'condition' || !(isSetApart(pair) || (pair.how === 'colon' && pair.prose))) continue;
    const value = cleanLine(pair.value);
    if (!isPlainValue(value, CONDITION_LENGTH)) continue;
    if (parts.some((part) => part.value.includes(value))) continue;
    parts.push({ label: pair.label.replace(/\s*:$/, ''), value });
  }
  const [first, ...more] = parts;
  if (first === undefined) return;
  const value = more.length === 0 ? first.value : parts.map((part) => `${part.label}: ${part.value}`).join('\n');
  into.add('condition', {
    value: value.slice(0, 2000),
    from: 'page-text',
    text: parts.map((part) => `${part.label}: ${part.value}`).join(' '),
    sure: 'likely',
  });
}
