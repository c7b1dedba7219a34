import { meaningOf } from '../roles/label-list.ts';
import { isKnownLabel, isLabelLike } from './label-like.ts';
import type { Line } from './lines.ts';
import type { Pair } from './pair.ts';

// A dash after nothing but a label is as good as a colon; so is a tab, or dots that lead to the value.
const DASHED = /^([^|•·:–—]{2,40}) (?:[–—-]|\.{3,}|…+|_{3,}) ?(?=\S)/u;
const BETWEEN =
  /\s[|•·–—]\s|(?<![•·*])[|•·](?![•·*])|;(?=\s*[\p{L} ]{2,30}:)|(?<=[\p{Ll}\d)%.])\s{1,3}(?=\p{Lu}[\p{L} ]{1,20}: ?\S)/u;

/** Labels and values within one line: `Lot: 12 | Odometer: 45,210 mi`, `VIN - 5ZX…`, `Miles ...... 118,406`. */
export function linePairs(line: Line): readonly Pair[] {
  if (line.text.length > 1500 || line.text.length < 4) return [];
  const pairs: Pair[] = [];
  for (const part of partsOf(line.text)) {
    const told = labeled(part) ?? runOn(part);
    if (told === null) continue;
    const { label, value, how } = told;
    pairs.push({ label, value, after: '', node: line.element, how, prose: line.prose, from: 'page-text' });
  }
  return pairs;
}

function partsOf(text: string): readonly string[] {
  const dashed = DASHED.exec(text)?.[1];
  if (dashed !== undefined && isKnownLabel(dashed)) return [text];
  return text
    .split(BETWEEN)
    .slice(0, 40)
    .map((part) => part.trim())
    .filter((part) => part !== '');
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
