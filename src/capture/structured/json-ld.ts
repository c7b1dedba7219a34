import type { Budget } from '../budget.ts';
import { addValue, schemaName, type Thing } from './thing.ts';

/**
 * The things in one JSON-LD script, nested ones included. Handles `@graph`, arrays, several types, prefixed names, terms
 * that the page's own context maps to schema.org, and `@value`. Contexts are never fetched. A script that is not JSON
 * gives nothing.
 */
export function readJsonLd(text: string, budget: Budget): readonly Thing[] {
  const data = parse(text);
  if (data === undefined) return [];
  const reader = new Reader(budget);
  reader.read(data, 0, new Map());
  return reader.things;
}

function parse(text: string): unknown {
  const bare = text
    .replace(/^\s*(?:<!--|\/\/\s*<!\[CDATA\[|\/\*)?[^[{]{0,40}/, '')
    .replace(/(?:-->|\/\/\s*\]\]>)?[\s;]*$/, '');
  for (const candidate of [text, bare, withoutRawBreaks(bare)]) {
    try {
      return JSON.parse(candidate);
    } catch {
      // Not JSON as it stands: the next candidate repairs one more of the slips that pages make.
    }
  }
  return undefined;
}

/** A line break inside a string is not JSON, but common in descriptions; between tokens a blank does as well. */
// biome-ignore lint/suspicious/noControlCharactersInRegex: raw control characters are the slip to repair.
const withoutRawBreaks = (text: string): string => text.replace(/[\u0000-\u001F]/g, ' ');

type Terms = ReadonlyMap<string, string>;

class Reader {
  readonly things: Thing[] = [];
  private readonly budget: Budget;

  constructor(budget: Budget) {
    this.budget = budget;
  }

  read(data: unknown, depth: number, terms: Terms): void {
    if (depth > this.budget.thingDepth) return;
    if (Array.isArray(data)) for (const item of data.slice(0, this.budget.things)) this.read(item, depth + 1, terms);
    else if (isRecord(data)) this.thing(data, depth, terms);
  }

  private thing(data: Record<string, unknown>, depth: number, outer: Terms): Thing | null {
    if (this.things.length >= this.budget.things || depth > this.budget.thingDepth) return null;
    const terms = withContext(own(data, '@context'), outer);
    const typeNames = strings(own(data, '@type')).concat(strings(own(data, 'type')));
    const thing: Thing = {
      types: typeNames.map((name) => nameOf(name, terms)).filter((name) => name !== ''),
      id: strings(own(data, '@id'))[0]?.slice(0, 500) ?? '',
      properties: new Map(),
      syntax: 'json-ld',
      element: null,
    };
    this.things.push(thing);
    for (const key of Object.keys(data).slice(0, 300)) {
      const value = own(data, key);
      if (key === '@graph' || key === '@included') this.read(value, depth + 1, terms);
      const property = key.startsWith('@') ? '' : nameOf(key, terms);
      if (property !== '') this.values(thing, property, value, depth, terms);
    }
    return thing;
  }

  private values(thing: Thing, property: string, value: unknown, depth: number, terms: Terms): void {
    if (Array.isArray(value)) {
      if (depth >= this.budget.thingDepth) return;
      for (const item of value.slice(0, 500)) this.values(thing, property, item, depth + 1, terms);
    } else if (isRecord(value)) {
      const literal = own(value, '@value') ?? own(value, '@list');
      if (literal !== undefined) {
        if (depth < this.budget.thingDepth) this.values(thing, property, literal, depth + 1, terms);
        return;
      }
      const inner = this.thing(value, depth + 1, terms);
      if (inner !== null) addValue(thing, property, inner);
    } else if (typeof value === 'string') addValue(thing, property, value.slice(0, this.budget.run));
    else if (typeof value === 'number' || typeof value === 'boolean') addValue(thing, property, String(value));
  }
}

const isRecord = (data: unknown): data is Record<string, unknown> =>
  typeof data === 'object' && data !== null && !Array.isArray(data);

const own = (data: Record<string, unknown>, key: string): unknown => (Object.hasOwn(data, key) ? data[key] : undefined);

const strings = (value: unknown): string[] =>
  (Array.isArray(value) ? value : [value]).filter((item) => typeof item === 'string').slice(0, 20);

/** Adds the terms that a context inside the page maps to names of schema.org. */
function withContext(context: unknown, outer: Terms): Terms {
  const maps = (Array.isArray(context) ? context.slice(0, 10) : [context]).filter(isRecord);
  if (maps.length === 0) return outer;
  const terms = new Map(outer);
  for (const map of maps) {
    for (const term of Object.keys(map).slice(0, 200)) {
      const meaning = own(map, term);
      const name = isRecord(meaning) ? own(meaning, '@id') : meaning;
      if (typeof name === 'string' && schemaName(name) !== '') terms.set(term, schemaName(name));
    }
  }
  return terms;
}

const nameOf = (name: string, terms: Terms): string => terms.get(name) ?? schemaName(name);
