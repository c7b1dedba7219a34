import { altered, deep, NotApplicable, withDeep } from '../lib/case.mjs';
import { fitHeads } from '../lib/chain.mjs';
import { bareOf, heldOf } from '../lib/hash.mjs';
import { rehashed } from './entries.mjs';

const chosen = (it, entries) => [
  ...new Set(entries.flatMap((wanted) => (wanted.every ? it.all(wanted) : [it.one(wanted)]))),
];
const put = (it, at, form, inner) => {
  it.rows[at] = { value: { [form]: inner } };
};

/** Entries are held back, properly: every hash still fits. */
export function holdBack(it, { entries, set = {}, rehash = 'none', close }) {
  for (const at of chosen(it, entries)) {
    if (it.form(at) !== 'entry') throw new NotApplicable('it is held back already');
    let held = heldOf(it.get(at), it.hashes);
    for (const [path, to] of Object.entries(set)) held = withDeep(held, path, altered(deep(held, path), to, it.random));
    put(it, at, 'held', held);
    rehashed(it, at, rehash);
  }
  return it.close(close);
}

/** Lines show their place only, with their true hash: nothing can be made again from them. */
export function showPlaceOnly(it, { entries, set = {}, close }) {
  for (const at of chosen(it, entries)) {
    let bare = bareOf(it.get(at));
    for (const [path, to] of Object.entries(set)) bare = withDeep(bare, path, altered(deep(bare, path), to, it.random));
    put(it, at, 'bare', bare);
  }
  return it.close(close);
}

/**
 * The bridge: an entry is forged, its hash made anew, and the next line shows only its place, with the forged hash before it
 * and the true hash of its own, so that the true rest of the chain, and every head that was noted, still fits.
 * @param unsalted the forged entry is made into one of the earliest kind first
 */
export function forgeAndBridge(it, { entry, set, unsalted = false, bridges = 1, before = 'keep', close }) {
  const at = it.one(entry);
  let inner = it.get(at);
  for (const [path, to] of Object.entries(set))
    inner = withDeep(inner, path, altered(deep(inner, path), to, it.random));
  if (unsalted) delete inner.salt;
  inner.hash = it.hashes.entry(inner);
  it.set(at, inner);
  const places = it.places(inner.device);
  const own = places.indexOf(at);
  for (let i = 1; i <= bridges; i++) {
    const next = places[own + i];
    if (next === undefined) throw new NotApplicable('nothing comes after it');
    const bare = bareOf(it.get(next));
    put(it, next, 'bare', i === 1 ? { ...bare, previous: inner.hash } : bare);
  }
  // What came before goes, so that the forged entry is the first of its device that is shown.
  if (before === 'drop') for (const place of places.slice(0, own).reverse()) it.rows.splice(place, 1);
  if (before === 'bare') for (const place of places.slice(0, own)) put(it, place, 'bare', bareOf(it.get(place)));
  return it.close(close);
}

/** The same with a whole forged beginning: each line up to the bridge is made anew without a salt. */
export function forgeBeginning(it, { device, upTo, set, close }) {
  const places = it.places(it.device(device));
  const last = it.one(upTo);
  const own = places.indexOf(last);
  for (const place of places.slice(0, own + 1)) {
    const { salt: _, content: __, ...inner } = it.get(place);
    if (it.form(place) !== 'entry') put(it, place, 'entry', { ...inner, happening: { kind: 'lot-dropped' } });
    else it.set(place, inner);
  }
  let inner = it.get(last);
  for (const [path, to] of Object.entries(set))
    inner = withDeep(inner, path, altered(deep(inner, path), to, it.random));
  it.set(last, inner);
  for (const [i, place] of places.slice(0, own + 1).entries()) {
    const now = it.get(place);
    const previous = i === 0 ? now.previous : it.get(places[i - 1]).hash;
    it.set(place, { ...now, previous, hash: it.hashes.entry({ ...now, previous }) });
  }
  const next = places[own + 1];
  if (next === undefined) throw new NotApplicable('nothing comes after it');
  put(it, next, 'bare', { ...bareOf(it.get(next)), previous: it.get(last).hash });
  return it.close(close);
}

/** A place is put at the end of a chain, with a made-up hash, and the head names it. */
export function appendBare(it, { device, close }) {
  const places = it.places(it.device(device));
  const last = it.get(places.at(-1));
  const bare = {
    ...bareOf(last),
    sequence: last.sequence + 1,
    previous: last.hash,
    hash: it.random(32).toString('hex'),
  };
  it.rows.splice(places.at(-1) + 1, 0, { value: { bare } });
  fitHeads(it);
  return it.close(close);
}

/** One line gets another form without its parts being changed: what is looked at is then not what is hashed. */
export function relabel(it, { entry, form, add = {}, drop = [], close }) {
  const at = it.one(entry);
  const inner = { ...it.get(at), ...add };
  for (const name of drop) delete inner[name];
  put(it, at, form, inner);
  return it.close(close);
}

/** An entry shown as one without what happened, and with the content's hash: the hash of a held line fits it. */
export function showWithoutHappening(it, { entry, close }) {
  const at = it.one(entry);
  put(it, at, 'entry', it.form(at) === 'held' ? it.get(at) : heldOf(it.get(at), it.hashes));
  return it.close(close);
}

/** A held line that also says what happened: the said is not in its hash. */
export function heldThatTalks(it, { entry, happening, close }) {
  const at = it.one(entry);
  const inner = it.get(at);
  const held = it.form(at) === 'held' ? inner : heldOf(inner, it.hashes);
  put(it, at, 'held', { ...held, happening });
  return it.close(close);
}

/** The content's hash of another held line, its salt unknown, is put here, and the chain is made anew. */
export function swapHeldContents(it, { first, second, rehash, close }) {
  const [a, b] = [it.one(first), it.one(second)];
  const [one, two] = [it.get(a), it.get(b)];
  it.set(a, { ...one, content: two.content });
  it.set(b, { ...two, content: one.content });
  for (const at of [a, b].sort((x, y) => x - y)) rehashed(it, at, rehash);
  return it.close(close);
}

/** Lines of another pack of the same store come in among these. */
export function spliceFrom(it, { sample, wanted, as = 'added', close }) {
  const there = it.open(sample);
  const at = there.one(wanted);
  const inner = there.get(at);
  const here = it.places(inner.device).find((place) => it.get(place).sequence === inner.sequence);
  if (here === undefined) throw new NotApplicable('the number is not in this pack');
  if (as === 'instead') it.rows[here] = there.rows[at];
  else it.rows.splice(here + 1, 0, there.rows[at]);
  return it.close(close);
}
