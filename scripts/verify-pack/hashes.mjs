/*! Canonical JSON, hashes of entries, and the hash tree of a batch. */
import { createHash } from 'node:crypto';

export const sha256 = (data) => createHash('sha256').update(data).digest('hex');

export function canonical(value) {
  if (Array.isArray(value)) return `[${value.map(canonical).join(',')}]`;
  if (typeof value !== 'object' || value === null) return JSON.stringify(value);
  const members = Object.keys(value).sort();
  return `{${members.map((name) => `${JSON.stringify(name)}:${canonical(value[name])}`).join(',')}}`;
}

const leafHash = (text) =>
  createHash('sha256')
    .update(Buffer.from([0]))
    .update(text)
    .digest();
const nodeHash = (left, right) =>
  createHash('sha256')
    .update(Buffer.from([1]))
    .update(left)
    .update(right)
    .digest();

/** The root from one leaf and its path (RFC 9162, section 2.1.3.2); null when the path can't be of such a tree. */
function rootFrom(leaf, index, last, path) {
  let [node, end, hash] = [index, last, leaf];
  for (const step of path) {
    if (end === 0) return null;
    const beside = Buffer.from(step, 'hex');
    if (node % 2 === 1 || node === end) {
      hash = nodeHash(beside, hash);
      while (node % 2 === 0 && node > 0) [node, end] = [node / 2, Math.floor(end / 2)];
    } else hash = nodeHash(hash, beside);
    [node, end] = [Math.floor(node / 2), Math.floor(end / 2)];
  }
  return end === 0 ? hash.toString('hex') : null;
}

/** How the hash of each kind of line is made again. */
export const RULES = {
  entry({ hash: _, ...entry }) {
    if (!('salt' in entry)) return sha256(canonical(entry));
    const { happening, salt, ...rest } = entry;
    return sha256(canonical({ ...rest, content: sha256(canonical({ happening, salt })) }));
  },
  held({ hash: _, ...held }) {
    return sha256(canonical(held));
  },
  batch({ hash: _, row, ...fields }) {
    const leaf = leafHash(canonical({ lot: row.lot, salt: row.salt }));
    const content = row.index > fields.rows ? null : rootFrom(leaf, row.index, fields.rows, row.path);
    return content === null ? null : sha256(canonical({ ...fields, content }));
  },
  bare: ({ hash }) => hash,
};
