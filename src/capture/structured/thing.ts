import type { PageElement } from '../dom/page-tree.ts';

/** One item of structured data, the same whatever syntax the page used for it. */
export interface Thing {
  /** Type names of schema.org without their address: `Car`, `Offer`. */
  readonly types: readonly string[];
  readonly id: string;
  /** A Map, so that a property called `__proto__` is a name like any other. */
  readonly properties: Map<string, Value[]>;
  readonly syntax: 'json-ld' | 'microdata' | 'rdfa';
  /** Where its markup stands; null for a script. */
  readonly element: PageElement | null;
}

export type Value = string | Thing;

export const isThing = (value: Value): value is Thing => typeof value !== 'string';

/** `schema:Car`, `http://schema.org/Car` and `Car` are all `Car`; a name of another vocabulary is empty. */
export function schemaName(name: string): string {
  const local = /^(?:https?:\/\/(?:www\.|auto\.)?schema\.org\/|schema:)?([A-Za-z][A-Za-z0-9]{0,60})$/.exec(name.trim());
  return local?.[1] ?? '';
}

export function addValue(thing: Thing, property: string, value: Value): void {
  const values = thing.properties.get(property);
  if (values === undefined) thing.properties.set(property, [value]);
  else if (values.length < 500) values.push(value);
}

export function valuesOf(thing: Thing, ...properties: string[]): readonly Value[] {
  return properties.flatMap((property) => thing.properties.get(property) ?? []);
}

export function thingsOf(thing: Thing, ...properties: string[]): readonly Thing[] {
  return valuesOf(thing, ...properties).filter(isThing);
}

/** The texts of a property; of a thing there, its name or value. */
export function textsOf(thing: Thing, ...properties: string[]): readonly string[] {
  return valuesOf(thing, ...properties)
    .map((value) => (isThing(value) ? (textsOf(value, 'name')[0] ?? '') : value.trim()))
    .filter((text) => text !== '');
}

/** The one text of a property; empty when there is none or when there are several that differ. */
export function onlyText(thing: Thing, ...properties: string[]): string {
  const texts = new Set(textsOf(thing, ...properties));
  return texts.size === 1 ? ([...texts][0] ?? '') : '';
}

/** Replaces values that only name another thing of the page (`#offer`) by that thing. */
export function joinThings(things: readonly Thing[]): void {
  const byId = new Map<string, Thing>();
  for (const thing of things) if (thing.id !== '' && thing.properties.size > 0) byId.set(thing.id, thing);
  for (const thing of things) {
    for (const values of thing.properties.values()) {
      values.forEach((value, at) => {
        const id = isThing(value) ? (value.properties.size === 0 ? value.id : '') : REFERENCE.test(value) ? value : '';
        const named = id === '' ? undefined : byId.get(id);
        if (named !== undefined && named !== thing) values[at] = named;
      });
    }
  }
}

const REFERENCE = /^(?:#|_:|https?:\/\/)\S{1,500}$/;
