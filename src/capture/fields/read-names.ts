import { parseYear } from '../../domain/lot/parse-year.ts';
import { readVin } from '../../domain/vin/read-vin.ts';
import { modelYearOf } from '../../domain/vin/vin-year.ts';
import { cleanLine } from '../dom/clean-text.ts';
import { type PageNode, textOf } from '../dom/page-tree.ts';
import type { Candidates } from '../draft/candidates.ts';
import type { ReadFrom } from '../draft/draft-lot.ts';
import { canNameFact, labelRoles } from '../roles/label-roles.ts';
import type { Line } from '../text/lines.ts';
import { type Pair, pairText } from '../text/pair.ts';
import type { LotSource } from './field-reader.ts';
import { isPlainValue } from './plain-value.ts';
import { belongToModel, nameFrom, readVehicleName } from './vehicle-name.ts';

/** A text that may name the whole car, and how much such a text is worth. */
export interface NameText {
  readonly text: string;
  readonly from: ReadFrom;
  readonly score: number;
  readonly node: PageNode | null;
}

/** Year, make, model and trim: each from its label, and together from a text that names the car. */
export function readNames(source: LotSource, names: readonly NameText[], into: Candidates): void {
  const { thisYear } = source;
  for (const pair of source.pairs) readLabelled(pair, source, into);
  const labeled = (['make', 'model', 'trim'] as const).map((name) => into.of(name).filter((one) => one.score > 0.8));
  const makes = [...(labeled[0] ?? []).map((reading) => String(reading.value)), ...source.makes];
  for (const { text, from, score, node } of names) {
    const name = readVehicleName(text, thisYear + 2, makes);
    if (name === null) continue;
    const fits = yearFitsVin(name.year, thisYear, into);
    into.add('year', { value: name.year, from, text, score: score * (fits ? 1 : 0.5) }, node);
    // A single word after the year may be the make or the model.
    const sure = score * (name.model === '' ? 0.4 : name.knownMake ? 1 : name.unclear ? 0.55 : 0.9);
    into.add('make', { value: name.make, from, text, score: sure }, node);
    if (name.model === '') continue;
    const split = splitByLabels(name, labeled[1]?.map((one) => String(one.value)) ?? []);
    into.add('model', { value: split.model, from, text, score: sure * (name.trim === '' ? 1 : 0.85) }, node);
    if (split.trim !== '') into.add('trim', { value: split.trim, from, text, score: sure * 0.7 }, node);
  }
  shortest(into);
}

/** A model that has a label of its own says where in the name it ends. */
function splitByLabels(name: { readonly model: string; readonly trim: string }, models: readonly string[]) {
  const whole = [name.model, name.trim].filter((part) => part !== '').join(' ');
  const known = models.find((model) => `${whole.toLowerCase()} `.startsWith(`${model.toLowerCase()} `));
  return known === undefined ? name : { model: whole.slice(0, known.length), trim: whole.slice(known.length).trim() };
}

/** What one text calls the model another calls model and trim: the model is what both have. */
function shortest(into: Candidates): void {
  const models = [...into.of('model')].filter((one) => one.score >= 0.5);
  for (const one of models) {
    const shorter = models.find(
      (other) =>
        other.value.length < one.value.length &&
        `${one.value.toLowerCase()} `.startsWith(`${other.value.toLowerCase()} `),
    );
    if (shorter === undefined) continue;
    const trim = one.value.slice(shorter.value.length).trim();
    // A number or a body that one of them leaves out is still the model's.
    if (belongToModel(trim)) {
      into.add('model', { ...one, score: Math.min(0.95, Math.max(one.score, shorter.score) + 0.14) });
      continue;
    }
    into.add('model', { ...shorter, score: Math.min(0.95, Math.max(one.score, shorter.score) + 0.02) });
    if (/\p{L}/u.test(trim) && into.of('trim').every((reading) => reading.score < 0.6))
      into.add('trim', { ...one, value: trim, score: 0.55 });
  }
}

function readLabelled(pair: Pair, { thisYear, makes }: LotSource, into: Candidates): void {
  const { fact } = labelRoles(pair.label);
  const said = (role: 'year' | 'make' | 'model' | 'trim') => fact.get(role) ?? 0;
  if (!canNameFact(pair.label, pair.value)) return;
  const value = pair.value.split('\n')[0] ?? '';
  const text = pairText(pair);
  if (said('make') > 0 && said('model') > 0) {
    const name = nameFrom(` ${value}`, makes) ?? null;
    const year = readVehicleName(value, thisYear + 2, makes);
    const read = year ?? name;
    if (read === null) return;
    const sure = read.knownMake ? 0.95 : read.unclear ? 0.55 : 0.85;
    into.add('make', { value: read.make, from: pair.from, text, score: sure }, pair.node);
    if (read.model !== '') into.add('model', { value: read.model, from: pair.from, text, score: sure }, pair.node);
    if (year !== null) into.add('year', { value: year.year, from: pair.from, text, score: 0.95 }, pair.node);
    return;
  }
  if (said('year') > 0 && !pair.prose && (fact.get('other') ?? 0) < 1) {
    const read = parseYear(value.split(/[\s,]/, 1)[0] ?? '', thisYear);
    if (read.ok && read.value >= 1900)
      into.add('year', { value: read.value, from: pair.from, text, score: 0.97 * said('year') }, pair.node);
  }
  for (const field of ['make', 'model', 'trim'] as const) {
    if (said(field) === 0 || (fact.get('other') ?? 0) > said(field) || pair.prose) continue;
    if (
      (field === 'model' && said('year') > 0) ||
      !(isPlainValue(value, 60) || (field === 'trim' && isWordInCell(pair, value))) ||
      /^\d+ (?:results?|vehicles?)/i.test(value)
    )
      continue;
    into.add(field, { value, from: pair.from, text, score: 0.96 * said(field) }, pair.node);
  }
}

/** A word that is a label elsewhere, as `Town`, in a cell of its own behind one. */
const isWordInCell = ({ how, node }: Pair, value: string): boolean =>
  (how === 'cell' || how === 'head') &&
  node?.kind === 'element' &&
  /^(?:dd|td)$/.test(node.tag) &&
  /^\p{Lu}\p{Ll}+$/u.test(value);

/** Whether the likeliest VIN read so far can be of that model year; yes where none is read. */
function yearFitsVin(year: number, thisYear: number, into: Candidates): boolean {
  const best = into.best('vin');
  const vin = best === undefined ? undefined : readVin(best.value);
  return vin?.ok !== true || modelYearOf(vin.value, 'unknown', thisYear).candidates.includes(year);
}

/** The lines that may name a lot, headings first. */
export function nameLines(lines: readonly Line[], newest: number, makes: readonly string[]): readonly NameText[] {
  return lines.slice(0, 3000).flatMap((line): readonly NameText[] => {
    if (line.text.length > 1200 || readVehicleName(line.text, newest, makes) === null) return [];
    const before = line.text.slice(0, Math.max(0, line.text.search(/['’\d]\d(?:\d\d)? \p{Lu}/u)));
    const after = line.text.slice(before.length, before.length + 90);
    if (line.prose && (ANOTHERS.test(before.slice(-200)) || SOLD.test(after))) return [];
    const leads =
      line.prose && /^(?:(?:lot|item|unit|run)? ?#?[A-Z]{0,3}-?\d{1,6}[A-Z]?[.:)]? ?[–—-]? ?)?$/iu.test(before);
    const part = partNaming(line, newest, makes);
    if (part !== null) return [{ text: part, from: 'page-text', score: 0.9, node: line.element }];
    const score = line.heading === 1 ? 0.95 : line.heading > 0 ? 0.92 : line.prose ? (leads ? 0.74 : 0.66) : 0.85;
    return [{ text: line.text.slice(0, 400), from: 'page-text', score, node: line.element }];
  });
}

/** The part of a line in an element of its own that is the whole name, where the line goes on with other words. */
function partNaming({ text, element, prose }: Line, newest: number, makes: readonly string[]): string | null {
  if (prose) return null;
  for (const child of element.children) {
    if (child.kind === 'text' || !child.inline) continue;
    const own = cleanLine(textOf(child));
    if (own.length < 8 || own.length >= text.length || !text.includes(own)) continue;
    const name = readVehicleName(own, newest, makes);
    if (name !== null && name.model !== '') return own;
  }
  return null;
}

/** What is told of a car after its name is that it went, not that it is offered. */
const SOLD = /\b(?:sold|went|brought|traded|fetched) (?:for|at|to)\b/i;

const ANOTHERS =
  /\b(?:sister|instead|like (?:it|this)|similar|next|previous|last week|(?<!\b(?:is|are|be|being) )sold|traded|went for|I have|just like|compare)\b/i;
