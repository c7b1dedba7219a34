import { headsOf } from './backup.mjs';
import { sha256 } from './hash.mjs';
import { line } from './pack.mjs';

/** What a line of a chain is: `entry` in a backup, one of three in a pack; null for anything else. */
export function formOf(row, target) {
  if (target === 'backup') return 'entry';
  return (
    ['entry', 'held', 'batch', 'bare'].find(
      (form) => row.value !== null && typeof row.value === 'object' && form in row.value,
    ) ?? null
  );
}

export const innerOf = (row, target) => (target === 'backup' ? row.value : row.value[formOf(row, target)]);

export function withInner(row, target, inner) {
  return line(target === 'backup' ? inner : { [formOf(row, target)]: inner });
}

/**
 * Links the chain of a device anew from a place on: each `previous` fits, each hash is right. That is what anyone can do who
 * holds the whole journal. The head follows. The hash of a line that shows only its place is made up.
 * @param from index among the device's lines
 */
export function rechain(model, device, from, { renumber = false } = {}) {
  const { target, hashes } = model;
  const places = placesOf(model, device);
  for (let i = from; i < places.length; i++) {
    const at = places[i];
    const row = model.rows[at];
    const form = formOf(row, target);
    const inner = { ...innerOf(row, target) };
    const before = i === 0 ? null : innerOf(model.rows[places[i - 1]], target);
    if (before) inner.previous = before.hash;
    if (renumber && before) inner.sequence = before.sequence + 1;
    if (form === 'entry') inner.hash = hashes.entry(inner);
    if (form === 'held') inner.hash = hashes.held(inner);
    if (form === 'batch') inner.hash = hashes.batch(inner);
    if (form === 'bare') inner.hash = sha256(`${inner.id} ${inner.previous}`);
    model.rows[at] = withInner(row, target, inner);
  }
  fitHeads(model);
}

export function placesOf({ rows, target }, device) {
  return [...rows.keys()].filter((at) => {
    const form = formOf(rows[at], target);
    return form !== null && innerOf(rows[at], target)?.device === device;
  });
}

/** The heads of a pack again from its lines; a backup's follow when it is closed. */
export function fitHeads(model) {
  if (model.target === 'pack') {
    const inners = model.rows.filter((row) => formOf(row, 'pack') !== null).map((row) => innerOf(row, 'pack'));
    const { value } = model.pack.head;
    model.pack.head = line({ ...value, heads: headsOf(inners, value.heads) });
  }
  model.hashes.signAnew(model);
}
