import { altered, deep, NotApplicable, withDeep } from '../lib/case.mjs';

/**
 * Changes one field of one entry.
 * @param rehash `none`: its hash stays; `self`: its own hash is made anew; `link`: and the next one's `previous` follows;
 * `chain`: everything after it is made anew, heads too
 */
export function setField(it, { entry, path, to, rehash = 'none', close }) {
  const at = it.one(entry);
  const inner = it.get(at);
  const was = deep(inner, path);
  if (was === undefined && typeof to === 'object' && to !== null && !('literal' in to))
    throw new NotApplicable(`the entry has no ${path}`);
  it.set(at, withDeep(inner, path, altered(was, to, it.random)));
  rehashed(it, at, rehash);
  return it.close(close);
}

/** The same of many fields of one entry at once. */
export function setFields(it, { entry, set, rehash = 'none', close }) {
  const at = it.one(entry);
  for (const [path, to] of Object.entries(set)) {
    const inner = it.get(at);
    it.set(at, withDeep(inner, path, altered(deep(inner, path), to, it.random)));
  }
  rehashed(it, at, rehash);
  return it.close(close);
}

export function rehashed(it, at, how) {
  if (how === 'none') return;
  if (how === 'chain') return it.relink(at);
  const inner = it.get(at);
  const hash = it.form(at) === 'held' ? it.hashes.held(inner) : it.hashes.entry(inner);
  it.set(at, { ...inner, hash });
  const places = it.places(inner.device);
  const next = places[places.indexOf(at) + 1];
  if (how === 'link' && next !== undefined) it.set(next, { ...it.get(next), previous: hash });
}

/** What happened in two entries changes places, with the salts. */
export function swapContents(it, { first, second, rehash = 'none', close }) {
  const a = it.one(first);
  const b = it.one(second);
  const [one, two] = [it.get(a), it.get(b)];
  it.set(a, { ...one, happening: two.happening, salt: two.salt });
  it.set(b, { ...two, happening: one.happening, salt: one.salt });
  for (const at of [a, b].sort((x, y) => x - y)) rehashed(it, at, rehash);
  return it.close(close);
}

/** The salt goes, and the chain is made anew: the entry is of the earliest kind now. */
export function unsalt(it, { entry, set = {}, close }) {
  const at = it.one(entry);
  const { salt: _, ...inner } = it.get(at);
  let made = inner;
  for (const [path, to] of Object.entries(set)) made = withDeep(made, path, altered(deep(made, path), to, it.random));
  it.set(at, made);
  it.relink(at);
  return it.close(close);
}

/** Nothing is done: what is tried is the fingerprint that is held against it. */
export const asItIs = (it) => it.text;

/** Every leaf of every line is changed, one at a time: as many altered files as there are leaves. */
export function everyLeaf(it, { except = [], lines = 'chain', step = 1 }) {
  const variants = [];
  const rows = lines === 'chain' ? it.rows : headRows(it);
  let n = 0;
  for (const [at, row] of rows.entries()) {
    for (const path of leavesOf(row.value)) {
      if (except.some((pattern) => new RegExp(pattern).test(path)) || n++ % step !== 0) continue;
      const was = rows[at];
      const value = withDeep(row.value, path, altered(deep(row.value, path), { flip: true }));
      replace(it, rows, at, { value }, lines);
      variants.push({ label: `${lines} ${at} ${path}`, file: it.close({ header: 'keep' }) });
      replace(it, rows, at, was, lines);
    }
  }
  if (variants.length === 0) throw new NotApplicable('there is no such line');
  return variants;
}

function headRows(it) {
  return [it.target === 'pack' ? it.pack.head : it.backup.header];
}

function replace(it, rows, at, row, lines) {
  if (lines === 'chain') rows[at] = row;
  else if (it.target === 'pack') it.pack.head = row;
  else it.backup.header = row;
}

function leavesOf(value, before = '') {
  if (typeof value !== 'object' || value === null) return [before];
  return Object.entries(value).flatMap(([name, part]) =>
    name.includes('.') ? [] : leavesOf(part, before ? `${before}.${name}` : name),
  );
}
