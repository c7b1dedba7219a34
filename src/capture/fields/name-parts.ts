import { meaningOf } from '../roles/label-list.ts';
import { momentsIn } from '../tokens/moment-tokens.ts';
import { placesIn } from '../tokens/places.ts';
import { couldBeName } from './sale-name-words.ts';

/** The parts of a line that may be names, without the days and places that stand with them. */
export function nameParts(text: string): readonly string[] {
  return text
    .split(/\s+[|•·*/›»>–—]\s*|\s[|•·*›»>]|:\s+|, |\s(?=by \p{Lu})|\. (?=\p{Lu})/u)
    .slice(0, 8)
    .map(barePart)
    .filter((part) => part !== '' && !isPlace(part) && !/^(?:lot|item|unit) \S+ of\b/i.test(part));
}

/** A part without its day, without the number of the sale before it, and without what only says that it is a list. */
const barePart = (part: string): string =>
  withoutWhen(
    part
      .replace(/^by /, '')
      .replace(/^[^\p{L}\p{N}]+|[^\p{L}\p{N})'’.!]+$/gu, '')
      .replace(
        /^(?:sale|auction|event|session|catalog(?:ue)?|vente|encan|subasta)(?: no\.?| n°| #)? ?#?(?=[A-Z0-9-]*\d)[A-Z0-9-]+[ :·–-]+(?=\p{L}{3})/iu,
        '',
      )
      .trim(),
  )
    .replace(LISTING, '$1')
    .replace(SMALL_WORDS, '$1');

/** What says of a name that a list of its lots follows. */
const LISTING =
  /^(.* .*?) (?:run ?list|lot list|list of lots|catalog(?:ue)?|listings?|docket(?: sheet)?|sale sheet|online catalog)$/i;
/** Words written small behind a name of several large ones. */
const SMALL_WORDS =
  /^(\p{Lu}[\p{L}\d'’&-]*(?: (?:\p{Lu}[\p{L}\d'’&-]*|&|of|de|du))* \p{Lu}[\p{L}\d'’&-]*)(?: \p{Ll}+){1,3}$/u;

const isPlace = (part: string): boolean => placesIn(part, true).some(({ place }) => place.length >= part.length - 3);

/** `Sunday Clearance November 1` is a sale and a day; `December 1 Sale` is a name. */
function withoutWhen(part: string): string {
  let text = part;
  for (const { start, end, date } of momentsIn(part, 'en').toReversed()) {
    if (date === null || date.date === '') continue;
    text = `${text.slice(0, start)} ${text.slice(end)}`;
  }
  const bare = text.replace(/\s+/g, ' ').replace(/^[\s,;:–—-]+|[\s,;:(–—-]+$/g, '');
  // A date before the words of a sale is a part of its name.
  const isDated =
    bare !== part && part.endsWith(bare) && /^(?:\p{Lu}\p{L}+ ){0,2}(?:sale|auction|event)s?$/iu.test(bare);
  return isDated || /^(?:sale|auction|event|run|block)$/i.test(bare) ? part : bare;
}

export function tidyName(value: string): string | null {
  const bare = value
    .replace(/\s+/g, ' ')
    .replace(/[\s,;:.–—-]+$/, '')
    .replace(/^["“]|["”]$/g, '')
    .trim();
  return couldBeName(bare) && meaningOf(bare) === undefined ? bare : null;
}

export function titleParts(title: string): readonly string[] {
  return title
    .split(/\s[|•·–—:»>-]\s|\s?[|•·»]\s?|: |, |\s(?=by \p{Lu})/u)
    .map(barePart)
    .filter((part) => part !== '' && !/^(?:lot|item|unit|run)\b.{0,12}$/i.test(part) && !isPlace(part));
}
