import type { Budget } from '../budget.ts';
import type { DataScript } from '../dom/page-tree.ts';
import { bareVins } from '../fields/find-vins.ts';

/** A plain value of a page's own data, under the name that the page gives it. */
export interface RecordValue {
  readonly name: string;
  readonly value: string | number;
}

/** The plain values that a page's own data gives for one car, by lower-case key without marks; a key used twice with different values is left out. */
export interface PageRecord {
  readonly vin: string;
  readonly values: ReadonlyMap<string, RecordValue>;
}

/** Records with a VIN in scripts of type `application/json`. Their keys follow no standard, so little is taken from them. */
export function readPageJson(scripts: readonly DataScript[], budget: Budget): readonly PageRecord[] {
  const records: { vin: string; values: Map<string, RecordValue> }[] = [];
  const named = new Map<string, Record<string, unknown>>();
  for (const script of scripts) {
    if (script.type !== 'application/json') continue;
    const data = parse(script.text);
    const waiting: { value: unknown; depth: number }[] = [{ value: data, depth: 0 }];
    let left = budget.things;
    for (let next = waiting.pop(); next !== undefined && left > 0; next = waiting.pop()) {
      left--;
      const { value, depth } = next;
      if (typeof value !== 'object' || value === null || depth > budget.thingDepth) continue;
      const record = recordOf(value);
      if (record !== null && records.length < budget.lots) records.push(record);
      else if (record === null) keepNamed(value, named);
      for (const inner of Object.values(value).slice(0, 2000)) waiting.push({ value: inner, depth: depth + 1 });
    }
  }
  for (const { values } of records) nameReferences(values, named);
  return records;
}

/** An object with an id and a name, to which others refer by the id. */
function keepNamed(value: object, named: Map<string, Record<string, unknown>>): void {
  const { id, name } = value as { readonly id?: unknown; readonly name?: unknown };
  if ((typeof id === 'string' || typeof id === 'number') && typeof name === 'string' && named.size < 2000)
    named.set(String(id), value as Record<string, unknown>);
}

/** `saleId: "s91"` stands for the name of the sale with that id, and for that of the venue which it is at. */
function nameReferences(values: Map<string, RecordValue>, named: ReadonlyMap<string, Record<string, unknown>>): void {
  const add = (key: string, value: unknown): Record<string, unknown> | undefined => {
    const of = /^(sale|auction|event|venue|house)id$/i.exec(key)?.[1];
    const thing = of === undefined || typeof value === 'object' ? undefined : named.get(String(value));
    if (of === undefined || typeof thing?.name !== 'string') return undefined;
    const label = /venue|house/i.test(of) ? 'venue' : 'sale name';
    values.set(label.replace(' ', ''), { name: label, value: thing.name.slice(0, 200) });
    return thing;
  };
  for (const [key, { value }] of [...values]) {
    const sale = add(key, value);
    if (sale !== undefined) for (const [inner, deep] of Object.entries(sale).slice(0, 50)) add(inner, deep);
  }
}

function parse(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    // Not JSON after all: it then has nothing for us.
    return null;
  }
}

/** An object that has a VIN of its own, with its values and those one level down. */
function recordOf(data: object): { vin: string; values: Map<string, RecordValue> } | null {
  const values = new Map<string, RecordValue>();
  const spoiled = new Set<string>();
  const put = (name: string, value: unknown) => {
    const key = name.toLowerCase().replace(/[^a-z0-9]/g, '');
    if (typeof value !== 'string' && typeof value !== 'number') return;
    const before = values.get(key);
    if (before !== undefined && before.value !== value) spoiled.add(key);
    values.set(key, { name, value: typeof value === 'string' ? value.slice(0, 500) : value });
  };
  const entries = Object.entries(data).slice(0, 300);
  const own = entries.find(([name, value]) => /^(?:vehicle)?vin(?:number)?$/i.test(name) && typeof value === 'string');
  const vin = own === undefined ? undefined : bareVins(String(own[1]).toUpperCase())[0];
  if (vin === undefined) return null;
  for (const [name, value] of entries) {
    if (typeof value === 'object' && value !== null && !Array.isArray(value)) {
      for (const [inner, deep] of Object.entries(value).slice(0, 100)) put(`${name}.${inner}`, deep);
    } else put(name, value);
  }
  for (const key of spoiled) values.delete(key);
  return { vin, values };
}
