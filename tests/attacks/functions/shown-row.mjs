import { NotApplicable } from '../lib/case.mjs';
import { sha256 } from '../lib/hash.mjs';

/** @param how what is done to the one row of a batch that is shown, and to its path in the tree */
export function forgeRow(it, { how, close }) {
  const row = it.tools.shownRow?.(it) ?? null;
  if (row === null) throw new NotApplicable('waits for tools.shownRow');
  const { path, index, size } = row;
  switch (how) {
    case 'other price':
      row.set({ value: { ...row.value, facts: { ...row.value.facts, priceNow: 1 } } });
      break;
    case 'other VIN':
      row.set({ value: { ...row.value, facts: { ...row.value.facts, vin: `${row.value.facts.vin.slice(0, -1)}9` } } });
      break;
    case 'other lot’s id':
      row.set({ value: { ...row.value, id: `${row.value.id.slice(0, -1)}0` } });
      break;
    case 'other place':
      row.set({ index: index === 0 ? 1 : index - 1 });
      break;
    case 'place past the end':
      row.set({ index: size });
      break;
    case 'larger batch':
      row.set({ size: size + 1 });
      break;
    case 'batch of one':
      row.set({ size: 1, index: 0, path: [] });
      break;
    case 'path one shorter':
      row.set({ path: path.slice(0, -1) });
      break;
    case 'path one longer':
      row.set({ path: [...path, sha256('more')] });
      break;
    case 'path endless':
      row.set({ path: Array.from({ length: 100_000 }, () => path[0]) });
      break;
    case 'path in another order':
      row.set({ path: [...path].reverse() });
      break;
    // RFC 6962, 2.1: a leaf is hashed with 0 before it and a node with 1, so that a node can't be given out as a leaf.
    case 'a node given out as a row':
      row.set({
        leafBytes: Buffer.concat(path.slice(0, 2).map((hash) => Buffer.from(hash, 'hex'))),
        path: path.slice(1),
        index: index >> 1,
        size: (size + 1) >> 1,
      });
      break;
    case 'salt gone':
      row.set({ salt: undefined });
      break;
    case 'salt of another row':
      row.set({ salt: it.random(16).toString('hex') });
      break;
    case 'row of another batch':
      if (row.elsewhere === undefined) throw new NotApplicable('waits for `elsewhere` of a shown row');
      row.set(row.elsewhere);
      break;
    case 'not shown':
      row.remove();
      break;
    case 'shown twice, differing':
      row.again({ value: { ...row.value, facts: { ...row.value.facts, priceNow: 1 } } });
      break;
    default:
      throw new Error(`unknown way: ${how}`);
  }
  return it.close({ header: 'keep', ...close });
}

/** A file of the later format is given out as one of an earlier version, whose rules are weaker. */
export function downgrade(it, { drop = [], close }) {
  const holder = it.target === 'pack' ? it.pack : it.backup;
  const name = it.target === 'pack' ? 'head' : 'header';
  const { value } = holder[name];
  const oldest = it.target === 'pack' ? 1 : 2;
  if (value.version <= oldest) throw new NotApplicable('waits for a later version of the format');
  const kept = Object.fromEntries(Object.entries(value).filter(([key]) => !drop.includes(key)));
  holder[name] = { value: { ...kept, version: oldest } };
  return it.close({ header: 'keep', ...close });
}
