import { expect, test } from 'vitest';
import * as z from 'zod/mini';
import { happeningSchema, rowOfKind } from '../../src/journal/happening.ts';

interface Names {
  readonly KINDS: ReadonlySet<string>;
  readonly NAMES: ReadonlySet<string>;
}
const file = new URL('../../scripts/verify-pack/names.mjs', import.meta.url).href;

test('the script that checks packs knows every kind and every name that an entry about a lot can have', async () => {
  const { KINDS, NAMES }: Names = await import(file);
  const kinds = new Set<string>();
  const names = new Set<string>();
  const walk = (schema: unknown): void => {
    if (typeof schema !== 'object' || schema === null) return;
    if ('properties' in schema) for (const name of Object.keys(schema.properties ?? {})) names.add(name);
    for (const part of Object.values(schema)) walk(part);
  };
  const all = z.toJSONSchema(happeningSchema, { io: 'input', unrepresentable: 'any' });
  for (const one of all.oneOf ?? all.anyOf ?? []) {
    const { kind: schema } = (one.properties ?? {}) as { readonly kind?: { readonly const?: unknown } };
    const kind = String(schema?.const);
    if (!['lot', 'arrival', 'undo'].includes(rowOfKind(kind)?.about ?? '')) continue;
    kinds.add(kind);
    walk(one);
  }
  expect(kinds.size).toBeGreaterThan(10);
  expect([...KINDS].sort()).toEqual([...kinds].sort());
  expect([...NAMES].sort()).toEqual([...names].sort());
});
