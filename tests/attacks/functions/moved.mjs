import { NotApplicable } from '../lib/case.mjs';
import { nextId, timeOf, withTime } from '../lib/ids.mjs';
import { insertEntry } from './chains.mjs';
import { rehashed } from './entries.mjs';

/** An entry becomes another device's. */
export function moveEntry(it, { entry, to, relink = false, close }) {
  const at = it.one(entry);
  const inner = it.get(at);
  const device = it.device(to);
  const before = it
    .places(device)
    .filter((place) => place < at)
    .at(-1);
  if (before === undefined) throw new NotApplicable('that device has nothing before it');
  const author = it.get(before).author;
  it.set(at, { ...inner, device, author, ...(relink && { sequence: it.get(before).sequence + 1 }) });
  if (relink) {
    it.relinkAll(inner.device, { renumber: true });
    it.relink(at, { renumber: true });
  }
  return it.close(close);
}

/** A device is called something else everywhere. */
export function renameDevice(it, { device, to, close }) {
  const was = it.device(device);
  for (const at of it.places(was)) it.set(at, { ...it.get(at), device: to });
  it.relinkAll(to);
  return it.close(close);
}

/** Times of a device are moved, in the ids as well, and its chain is made anew. */
export function shiftTimes(it, { device, by, ids = true, close }) {
  const chosen = it.device(device);
  for (const at of it.places(chosen)) {
    const inner = it.get(at);
    it.set(at, { ...inner, at: inner.at + by, ...(ids && { id: withTime(inner.id, timeOf(inner.id) + by) }) });
  }
  it.relinkAll(chosen);
  return it.close(close);
}

/** Other times in the id than the entry's own. */
export function setIdTime(it, { entry, by, rehash = 'chain', close }) {
  const at = it.one(entry);
  const inner = it.get(at);
  it.set(at, { ...inner, id: withTime(inner.id, timeOf(inner.id) + by) });
  rehashed(it, at, rehash);
  return it.close(close);
}

/**
 * The batch that brought the lot in gives way to an entry that brings this lot in alone, with another VIN.
 * @param rehash `none` keeps the batch's hash
 */
export function splitBatch(it, { rehash = 'none', set = {}, close }) {
  const at = it.one({ device: 'buyer', nth: 0 });
  const { content: _, row: __, rows: ___, ...inner } = it.get(at);
  const whole = it
    .other('backup-files.jsonl')
    .split('\n')
    .find((text) => text.includes('"kind":"lots-added"') && text.includes(it.about.lot));
  const { happening, salt } = JSON.parse(whole);
  const lots = happening.lots
    .filter(({ id }) => id === it.about.lot)
    .map((lot) => ({ ...lot, facts: { ...lot.facts, ...set } }));
  if (lots.length !== 1) throw new NotApplicable('the lot did not come in by a batch');
  it.rows[at] = { value: { entry: { ...inner, happening: { ...happening, lots }, salt } } };
  rehashed(it, at, rehash);
  return it.close(close);
}

/** A batch in a backup becomes two entries, the rest renumbered and made anew. */
export function halveBatch(it, { close }) {
  const at = it.all({ kind: 'lots-added' }).find((row) => it.get(row).happening.lots.length > 1);
  if (at === undefined) throw new NotApplicable('there is no batch');
  const inner = it.get(at);
  const { lots } = inner.happening;
  const part = (some) => ({ ...inner.happening, lots: some });
  it.set(at, { ...inner, happening: part(lots.slice(0, 2)) });
  it.rows.splice(at + 1, 0, { value: { ...inner, id: nextId(inner.id), happening: part(lots.slice(2)) } });
  it.relink(at, { renumber: true });
  return it.close(close);
}

/** The lot is brought in a second time, with another VIN, at the end of a chain. */
export function bornTwice(it, { device = 'buyer', close }) {
  const born = it.get(it.one({ kind: 'lots-added', words: it.about.lot ?? '' }));
  const [lot] = born.happening.lots;
  const again = { ...born.happening, lots: [{ ...lot, facts: { ...lot.facts, miles: 41_400 } }] };
  return insertEntry(it, {
    after: { device, nth: -1 },
    set: { subject: { literal: 'lots' }, happening: { literal: again } },
    rest: 'renumber',
    close,
  });
}
