import { type Outcome, ok, refuse } from '../outcome.ts';
import { plainWords } from '../text/plain-words.ts';
import type { TitleBrand } from './money-rules.ts';

/** Wordings that sales use for the same state of a title (common practice, no source). What is not here is asked about. */
const SAME_MEANING: readonly (readonly string[])[] = [
  ['clean', 'clear', 'not branded'],
  ['rebuilt', 'prior salvage', 'previously salvage', 'rebuilt salvage'],
  ['salvage', 'salvaged'],
  ['junk', 'junked', 'parts only', 'not repairable', 'non repairable', 'nonrepairable', 'junk not repairable', 'scrap'],
  ['flood', 'flooded', 'flood damage', 'water damage'],
  ['fire', 'fire damage'],
  ['hail', 'hail damage'],
  ['buyback', 'buy back', 'manufacturer buyback', 'manufacturer buy back', 'lemon', 'lemon law', 'lemon law buyback'],
  ['not actual', 'mileage not actual', 'not actual mileage', 'not actual miles', 'true mileage unknown', 'tmu'],
  ['exceeds limits', 'exceeds mechanical limits', 'mileage exceeds mechanical limits'],
  ['theft', 'theft recovered', 'theft recovery', 'recovered theft', 'stolen recovered'],
  ['bonded', 'bond'],
];

/** Words that say only that it is about a title. */
const FILLERS = /\b(?:titled?|brand(?:ed)?|certificate|cert|of|the|status)\b/g;

/**
 * Finds the state of the title that is meant by its id, its name or another wording of the same: "CLEAN TITLE", "Lemon".
 * Two states at once ("clean, prior hail") are nobody's to choose but the user's, and are refused.
 * @returns the id of a title state in the setup
 */
export function matchTitle(text: string, titles: readonly Pick<TitleBrand, 'id' | 'name'>[]): Outcome<string> {
  const words = plainWords(text);
  if (words === '') return refuse('empty', 'Enter the title.');
  if (text.includes('?')) {
    return refuse('unsure', `“${text.trim()}” is a question, so the title is not known. Choose the title.`);
  }
  const exact = titles.find((title) => plainWords(title.id) === words || plainWords(title.name) === words);
  if (exact !== undefined) return ok(exact.id);
  const parts = statesInParts(text, titles);
  if ([...parts].filter((state) => state !== UNKNOWN).length > 1) {
    return refuse('ambiguous', `“${text.trim()}” names more than one title. Choose the one it is.`);
  }
  const whole = titlesNamed(words, titles);
  const found = whole.length > 0 || parts.has(UNKNOWN) ? whole : titles.filter(({ id }) => parts.has(id));
  const [first, second] = found;
  if (first === undefined) {
    const known = titles.map((title) => title.name).join(', ');
    return refuse('unknown-title', `“${text.trim()}” is not a title in Setup (${known}). Choose one, or add it.`);
  }
  if (second !== undefined) {
    const choices = found.map((title) => title.name).join(' or ');
    return refuse('ambiguous', `“${text.trim()}” could be ${choices}. Choose the one it is.`);
  }
  return ok(first.id);
}

function titlesNamed<Title extends Pick<TitleBrand, 'id' | 'name'>>(
  words: string,
  titles: readonly Title[],
): readonly Title[] {
  const bare = withoutFillers(words);
  const alike = SAME_MEANING.find((group) => group.includes(bare)) ?? [bare];
  return titles.filter((title) =>
    [title.id, title.name].some((name) => alike.includes(withoutFillers(plainWords(name)))),
  );
}

/** A part of the text that is no state. */
const UNKNOWN = '';

/** "Rebuilt/Salvage" is two states with a mark between them; "rebuilt salvage" is one, and so is "clean and clear". */
function statesInParts(text: string, titles: readonly Pick<TitleBrand, 'id' | 'name'>[]): ReadonlySet<string> {
  const states = text.split(/[/,;|+&]|\b(?:or|and)\b/i).flatMap((part) => {
    const words = plainWords(part);
    const known = SAME_MEANING.find((group) => group.includes(withoutFillers(words)))?.[0];
    return words === '' ? [] : (titlesNamed(words, titles)[0]?.id ?? known ?? UNKNOWN);
  });
  return new Set(states);
}

const withoutFillers = (words: string): string => words.replace(FILLERS, ' ').replace(/ +/g, ' ').trim() || words;
