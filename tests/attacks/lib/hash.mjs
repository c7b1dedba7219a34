import { createHash } from 'node:crypto';

/**
 * The attacker's own arithmetic, written from the description of the format and not from the program: RFC 8785 for the text
 * of a value, SHA-256 (FIPS 180-4) of its UTF-8. Where the format moves on, `tools` of the adapter replaces a part of it.
 */
export function sha256(data) {
  return createHash('sha256').update(data).digest('hex');
}

export function canonical(value) {
  if (Array.isArray(value)) return `[${value.map(canonical).join(',')}]`;
  if (typeof value === 'object' && value !== null) {
    const names = Object.keys(value).sort();
    return `{${names.map((name) => `${JSON.stringify(name)}:${canonical(value[name])}`).join(',')}}`;
  }
  return JSON.stringify(value);
}

/** Of what happened and the salt: stands for both where an entry is held back. */
function contentHash({ happening, salt, rows }) {
  if (rows !== undefined && Array.isArray(happening?.lots)) return treeOfBatch(happening, salt).toString('hex');
  return sha256(canonical({ happening, salt }));
}

const leaf = (value) => digest(Buffer.from([0]), canonical(value));
export const node = (left, right) => digest(Buffer.from([1]), left, right);

function digest(...parts) {
  const hash = createHash('sha256');
  for (const part of parts) hash.update(part);
  return hash.digest();
}

/** RFC 6962, section 2.1, over what the entry says beside its rows and then each row, each with a salt of its own. */
function treeOfBatch({ lots, ...happening }, salt) {
  const salted = (n) => {
    const number = Buffer.alloc(4);
    number.writeUInt32BE(n);
    return digest(Buffer.from(salt, 'hex'), number).subarray(0, 16).toString('hex');
  };
  return treeOf([leaf({ happening, salt: salted(0) }), ...lots.map((lot, i) => leaf({ lot, salt: salted(i + 1) }))]);
}

function treeOf(leaves) {
  if (leaves.length === 1) return leaves[0];
  let half = 1;
  while (half * 2 < leaves.length) half *= 2;
  return node(treeOf(leaves.slice(0, half)), treeOf(leaves.slice(half)));
}

/** The root that a shown row and its path lead to: RFC 9162, section 2.1.3.2. */
export function rootOf({ index, lot, salt, path }, rows) {
  let [at, last, hash] = [index, rows, leaf({ lot, salt })];
  for (const step of path) {
    const beside = Buffer.from(step, 'hex');
    if (at % 2 === 1 || at === last) {
      hash = node(beside, hash);
      while (at % 2 === 0 && at > 0) [at, last] = [at >> 1, last >> 1];
    } else hash = node(hash, beside);
    [at, last] = [at >> 1, last >> 1];
  }
  return hash.toString('hex');
}

/** Of a line that shows one row of a batch. */
function batchHash({ row, hash: _, ...fields }) {
  return sha256(canonical({ ...fields, content: rootOf(row, fields.rows) }));
}

/** What stands for the content covers the happening and the salt, so neither is among the fields, even where it is there. */
function heldHash(held) {
  const { hash: _, happening: __, salt: ___, ...fields } = held;
  return sha256(canonical(fields));
}

function entryHash(entry, of = contentHash) {
  const { happening, salt, hash: _, ...fields } = entry;
  if (salt === undefined) return sha256(canonical({ ...fields, happening }));
  return heldHash({ ...fields, content: of(entry) });
}

/** What an attack makes hashes with; an adapter may replace any part. */
export function hashTools(tools = {}) {
  const content = tools.contentHash ?? contentHash;
  return {
    content,
    held: tools.heldHash ?? heldHash,
    batch: batchHash,
    entry: tools.entryHash ?? ((entry) => entryHash(entry, content)),
    /** Signs every head anew with a key of the attacker's own, where heads are signed; called after each rewrite. */
    signAnew: tools.signAnew ?? (() => undefined),
  };
}

/** The held form of an entry, properly made. */
export function heldOf(entry, hashes) {
  const { happening: _, salt: __, ...fields } = entry;
  return { ...fields, content: hashes.content(entry) };
}

export function bareOf({ id, device, sequence, previous, hash }) {
  return { id, device, sequence, previous, hash };
}
