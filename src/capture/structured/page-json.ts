import type { Budget } from '../budget.ts';
import type { DataScript } from '../dom/page-tree.ts';
import { bareVins } from '../fields/find-vins.ts';

/** The plain values that a page's own data gives for one car, by lower-case key without marks; a key used twice with different values is left out. */
export interface PageRecord {
  readonly vin: string;
  readonly values: ReadonlyMap<string, string | number>;
}

/** Records with a VIN in scripts of type `application/json`. Their keys follow no standard, so little is taken from them. */
export function readPageJson(scripts: readonly DataScript[], budget: Budget): readonly PageRecord[] {
  const records: PageRecord[] = [];
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
      for (const inner of Object.values(value).slice(0, 2000)) waiting.push({ value: inner, depth: depth + 1 });
    }
  }
  return records;
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
function recordOf(data: object): PageRecord | null {
  const values = new Map<string, string | number>();
  const spoiled = new Set<string>();
  const put = (name: string, value: unknown) => {
    const key = name.toLowerCase().replace(/[^a-z0-9]/g, '');
    if (typeof value !== 'string' && typeof value !== 'number') return;
    if (values.has(key) && values.get(key) !== value) spoiled.add(key);
    values.set(key, typeof value === 'string' ? value.slice(0, 500) : value);
  };
  const entries = Object.entries(data).slice(0, 300);
  const own = entries.find(([name, value]) => /^(?:vehicle)?vin(?:number)?$/i.test(name) && typeof value === 'string');
  const vin = own === undefined ? undefined : bareVins(String(own[1]).toUpperCase())[0];
  if (vin === undefined) return null;
  for (const [name, value] of entries) {
    if (typeof value === 'object' && value !== null && !Array.isArray(value)) {
      for (const [inner, deep] of Object.entries(value).slice(0, 100)) put(name + inner, deep);
    } else put(name, value);
  }
  for (const key of spoiled) values.delete(key);
  return { vin, values };
}
