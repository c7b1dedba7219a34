import { altered, deep, NotApplicable, withDeep } from '../lib/case.mjs';
import { fitHeads } from '../lib/chain.mjs';
import { nextId } from '../lib/ids.mjs';

/**
 * Takes entries out.
 * @param rest `nothing`; `relink`: the chain is made anew, with a hole in its numbers; `renumber`: without one
 * @param heads `fit` or `keep`
 */
export function dropEntries(it, { entries, rest = 'nothing', heads = 'fit', close }) {
  const gone = entries.flatMap((wanted) => (wanted.every ? it.all(wanted) : [it.one(wanted)]));
  const devices = new Set(gone.map((at) => it.get(at).device));
  for (const at of [...new Set(gone)].sort((a, b) => b - a)) it.rows.splice(at, 1);
  for (const device of devices)
    if (rest !== 'nothing' && it.places(device).length > 0) it.relinkAll(device, { renumber: rest === 'renumber' });
  if (heads === 'fit') fitHeads(it);
  return it.close(close);
}

/** Every line of a device goes. */
export function dropDevice(it, { device, heads = 'fit', close }) {
  return dropEntries(it, { entries: [{ device, every: true }], heads, close });
}

/** A chain ends earlier. */
export function cutChain(it, { device, last, heads = 'fit', close }) {
  const places = it.places(it.device(device));
  for (const at of places.slice(-last).reverse()) it.rows.splice(at, 1);
  if (heads === 'fit') fitHeads(it);
  return it.close(close);
}

/** Only what was there when a head was noted: a true journal of an earlier day, given out as today's. */
export function asOf(it, { noted, close }) {
  const [device, sequence] = it.about.noted[noted].split(':');
  const at = it.places(device).find((place) => it.get(place).sequence === Number(sequence));
  if (at === undefined) throw new NotApplicable('the noted entry is not in the sample');
  const { id } = it.get(at);
  for (let i = it.rows.length - 1; i >= 0; i--) if (it.form(i) !== null && it.get(i).id > id) it.rows.splice(i, 1);
  if (it.target === 'pack') {
    const shown = it.rows
      .filter((_, i) => it.form(i) === 'entry')
      .map((row) => JSON.stringify(row.value))
      .join('\n');
    for (let i = it.rows.length - 1; i >= 0; i--) {
      const file = it.rows[i].value.file;
      if (file !== undefined && !shown.includes(file.hash)) it.rows.splice(i, 1);
    }
  }
  fitHeads(it);
  return it.close(close);
}

/** One entry twice: the very same line, or with the next number and the chain made anew. */
export function duplicateEntry(it, { entry, as = 'same', close }) {
  const at = it.one(entry);
  it.rows.splice(at + 1, 0, { ...it.rows[at] });
  if (as === 'next') it.relink(at + 1, { renumber: true });
  return it.close(close);
}

/** A second entry with the same number after the same entry: the chain forks. */
export function forkEntry(it, { entry, set, heads = 'keep', close }) {
  const at = it.one(entry);
  const inner = it.get(at);
  let twin = { ...inner, id: nextId(inner.id) };
  for (const [path, to] of Object.entries(set)) twin = withDeep(twin, path, altered(deep(twin, path), to, it.random));
  twin.hash = it.hashes.entry(twin);
  it.rows.splice(at + 1, 0, it.rows[at]);
  it.set(at + 1, twin);
  if (heads === 'both' && it.target === 'pack') {
    const { value } = it.pack.head;
    const head = { device: twin.device, sequence: twin.sequence, hash: twin.hash };
    it.pack.head = { value: { ...value, heads: [...value.heads, head] } };
  }
  return it.close(close);
}

/**
 * An entry that never was, after one that was.
 * @param rest `nothing`, `relink` (its number is there twice) or `renumber`
 */
export function insertEntry(it, { after, set, rest = 'nothing', close }) {
  const at = it.one(after);
  const inner = it.get(at);
  let made = { ...inner, id: nextId(inner.id), previous: inner.hash, sequence: inner.sequence + 1 };
  for (const [path, to] of Object.entries(set)) made = withDeep(made, path, altered(deep(made, path), to, it.random));
  made.hash = it.hashes.entry(made);
  it.rows.splice(at + 1, 0, it.rows[at]);
  it.set(at + 1, made);
  if (rest !== 'nothing') it.relink(at + 1, { renumber: rest === 'renumber' });
  return it.close(close);
}

/** Two lines change places in the file; nothing in them changes. */
export function swapLines(it, { first, second, close }) {
  const a = it.one(first);
  const b = it.one(second);
  [it.rows[a], it.rows[b]] = [it.rows[b], it.rows[a]];
  return it.close(close);
}

/** Every device's chain is made anew, each with a small lie in its first shown entry. */
export function rewriteAll(it, { devices, close }) {
  for (const role of devices) {
    const at = it.one({ device: role, form: 'entry' });
    const inner = it.get(at);
    it.set(at, { ...inner, author: `${inner.author} himself` });
    it.relink(at);
  }
  return it.close(close);
}
