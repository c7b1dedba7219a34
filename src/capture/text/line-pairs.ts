import { type Meaning, meaningOf } from '../roles/label-list.ts';
import { isKnownLabel, isLabelLike } from './label-like.ts';
import type { Line } from './lines.ts';
import type { Pair } from './pair.ts';

// A dash after nothing but a label is as good as a colon; so is a tab, or dots that lead to the value.
const DASHED = /^([^|•·:–—]{2,40}) (?:[–—-]|\.{3,}|…+|_{3,}) ?(?=\S)/u;
const BETWEEN = /\s[|•·–—]\s|(?<![•·*])[|•·](?![•·*])|;(?=\s*[\p{L} ]{2,30}:)/u;

/** Labels and values within one line: `Lot: 12 | Odometer: 45,210 mi`, `VIN - 5ZX…`, `Miles ...... 118,406`. */
export function linePairs(line: Line): readonly Pair[] {
  if (line.text.length > 1500 || line.text.length < 4) return [];
  const pairs: Pair[] = [];
  for (const part of partsOf(line.text)) {
    const told = labeled(part) ?? runOn(part);
    if (told === null) {
      pairs.push(...clausesOf(part).map((clause) => ({ ...clause, after: '', node: line.element, ...IN_CLAUSE })));
      continue;
    }
    const { label, value, how } = told;
    pairs.push({ label, value, after: '', node: line.element, how, prose: line.prose, from: 'page-text' });
  }
  // A row of facts that is long by their number is no running text.
  const named = pairs.filter(({ how, label }) => how === 'colon' && isKnownLabel(label)).length;
  return named >= 3 && named === pairs.length ? pairs.map((pair) => ({ ...pair, prose: false })) : pairs;
}

function partsOf(text: string): readonly string[] {
  const dashed = DASHED.exec(text)?.[1];
  if (dashed !== undefined && isKnownLabel(dashed)) return [text];
  return text
    .split(BETWEEN)
    .slice(0, 40)
    .flatMap(factsOf)
    .map((part) => part.trim())
    .filter((part) => part !== '');
}

const MOST_LABEL_WORDS = 4;

/** `Trim: Low Roof VIN: 5ZX…` are two facts: a known label with a colon begins the next, as many words as belong to it. */
function factsOf(part: string): readonly string[] {
  const facts: string[] = [];
  let from = 0;
  for (const { index: colon } of part.matchAll(/(?<!\d):(?!\/\/)(?= ?\S)/g)) {
    const words = [...part.slice(from, colon).matchAll(/(?<=\s)\p{Lu}[\p{L}.#]*/gu)].slice(-MOST_LABEL_WORDS);
    const starts = words.map(({ index }) => from + index);
    const start =
      starts.find((at) => meaningOf(part.slice(at, colon)) !== undefined) ??
      starts.findLast((at) => isKnownLabel(part.slice(at, colon)));
    // A fact or a sentence comes to its end before.
    if (start === undefined || !/:\s*\S|[.!?]\s*$/.test(part.slice(from, start))) continue;
    facts.push(part.slice(from, start));
    from = start;
  }
  return [...facts, part.slice(from)];
}

const IN_CLAUSE = { how: 'run-on', prose: false, from: 'page-text' } as const;
const LONGEST_CLAUSE = 60;
/** What is told in a word or two: no figures, which have their own way to be read. */
const WORDED: ReadonlySet<Meaning> = new Set([
  'title',
  'condition',
  'trim',
  'seller',
  'transmission',
  'drive',
  'location',
]);

/** `Trim Base. Title clean. Seller Orchard Street Motors.`: short clauses, each a known label and words. */
function clausesOf(part: string): readonly { readonly label: string; readonly value: string }[] {
  const clauses = part.split(/(?<=[\p{L}\d)]{2}|\s\d)\.(?:\s+(?=\p{Lu})|\s*$)/u);
  if (clauses.length < 2) return [];
  return clauses.flatMap((clause) => {
    if (clause.length > LONGEST_CLAUSE) return [];
    const words = clause.trim().split(' ');
    for (let count = Math.min(3, words.length - 1); count >= 1; count--) {
      const [label, value] = [words.slice(0, count).join(' '), words.slice(count).join(' ')];
      const meaning = meaningOf(label);
      if (meaning === undefined) continue;
      // A sentence goes on with a small word; a value is a name, or a word alone.
      const isValue = meaning === 'title' ? /^(?:\p{Lu}|\p{Ll}+$)/u : /^(?:\p{Lu}|\d)/u;
      return WORDED.has(meaning) && isValue.test(value) ? [{ label, value }] : [];
    }
    return [];
  });
}

interface Told {
  readonly label: string;
  readonly value: string;
  readonly how: 'colon' | 'run-on';
}

/** A known word right before a figure, or before a VIN: `MI 140,221`, `Lot 12`, `VIN 5ZX…`. */
function runOn(text: string): Told | null {
  const told = /^((?:[\p{L}#./°]+ ){1,3}?)(#?[\p{L}]{0,3}[\d$][^|]{0,60}|[A-HJ-NPR-Z\d]{17}\b.{0,20})$/u.exec(text);
  const [, label = '', value = ''] = told ?? [];
  return told !== null && meaningOf(label.trim()) !== undefined ? { label: label.trim(), value, how: 'run-on' } : null;
}

function labeled(text: string): Told | null {
  const colon = /^([^:]{1,48}?) ?:(?!\d\d\b|\/\/) ?(.+)$/su.exec(text);
  if (colon?.[1] !== undefined && colon[2] !== undefined && isLabelLike(colon[1])) {
    return { label: colon[1].trim(), value: colon[2].trim(), how: 'colon' };
  }
  const numbered = /^([\p{L} ]{2,20})#:? (.+)$/u.exec(text);
  if (numbered?.[1] !== undefined && numbered[2] !== undefined && isKnownLabel(numbered[1])) {
    return { label: numbered[1], value: numbered[2], how: 'colon' };
  }
  const dashed = DASHED.exec(text);
  if (
    dashed?.[1] !== undefined &&
    (isKnownLabel(dashed[1]) || /\.{3}|…|_{3}/.test(dashed[0])) &&
    isLabelLike(dashed[1])
  ) {
    return { label: dashed[1].trim(), value: text.slice(dashed[0].length).trim(), how: 'colon' };
  }
  return null;
}
