/*! What lines look like; nothing more is taken. */
import { RULES } from './hashes.mjs';

const HASH = /^[0-9a-f]{64}$/;
const DEVICE = /^[0-9A-HJKMNP-TV-Z]{10}$/;
const ID = /^[0-9A-HJKMNP-TV-Z]{26}$/;
const isCount = (value) => Number.isSafeInteger(value) && value >= 1;
const isText = (value, most = 1000) => typeof value === 'string' && value.length >= 1 && value.length <= most;

export const hasOnly = (value, names) => Object.keys(value).every((name) => names.includes(name));
export const isObject = (value) => typeof value === 'object' && value !== null && !Array.isArray(value);

/** What is wrong with the shape of the head; null when it can be used. */
export function headFault(head) {
  if (!isObject(head) || head.format !== 'headroom-evidence')
    return 'The first line of the data is not the head of a pack.';
  if (typeof head.version === 'number' && head.version > 2)
    return 'A newer Headroom made this pack; get its own script.';
  const names = [
    'format',
    'version',
    'madeAt',
    'lot',
    'heads',
    ...(head.version === 2 ? ['shows', 'stamps', 'witness'] : []),
  ];
  const sound =
    (head.version === 1 || head.version === 2) &&
    hasOnly(head, names) &&
    Number.isSafeInteger(head.madeAt) &&
    ID.test(head.lot) &&
    (head.version === 1 || ['sale', 'dispute', 'everything'].includes(head.shows)) &&
    Array.isArray(head.heads) &&
    head.heads.length > 0 &&
    head.heads.every((one) => isHead(one, head.version)) &&
    (head.stamps === undefined || (Array.isArray(head.stamps) && head.stamps.every(isStamp))) &&
    (head.witness === undefined || (head.version === 2 && isWitness(head.witness)));
  return sound ? null : 'The first line of the data is damaged.';
}

function isWitness(witness) {
  return (
    isObject(witness) &&
    hasOnly(witness, ['stored', 'sightings']) &&
    Array.isArray(witness.stored) &&
    witness.stored.every(
      (one) =>
        isObject(one) &&
        hasOnly(one, ['device', 'first', 'last', 'place', 'at']) &&
        DEVICE.test(one.device) &&
        [one.first, one.last, one.place].every(isCount) &&
        Number.isSafeInteger(one.at),
    ) &&
    Array.isArray(witness.sightings) &&
    witness.sightings.every(
      (one) =>
        isObject(one) &&
        hasOnly(one, ['by', 'publicKey', 'at', 'heads', 'signature']) &&
        DEVICE.test(one.by) &&
        HASH.test(one.publicKey) &&
        Number.isSafeInteger(one.at) &&
        Array.isArray(one.heads) &&
        one.heads.length >= 1 &&
        one.heads.length <= 100 &&
        one.heads.every((head) => isHead(head, 1)) &&
        /^[0-9a-f]{128}$/.test(one.signature),
    )
  );
}

function isStamp(one) {
  return (
    isObject(one) &&
    hasOnly(one, ['device', 'sequence', 'hash', 'token']) &&
    DEVICE.test(one.device) &&
    isCount(one.sequence) &&
    HASH.test(one.hash) &&
    isText(one.token, 64_000)
  );
}

function isHead(one, version) {
  if (!isObject(one) || !hasOnly(one, ['device', 'sequence', 'hash', ...(version === 2 ? ['signed'] : [])]))
    return false;
  if (!DEVICE.test(one.device) || !isCount(one.sequence) || !HASH.test(one.hash)) return false;
  const { signed } = one;
  if (signed === undefined) return true;
  return (
    isObject(signed) &&
    hasOnly(signed, ['publicKey', 'signature']) &&
    HASH.test(signed.publicKey) &&
    /^[0-9a-f]{128}$/.test(signed.signature)
  );
}

const PLACE = ['id', 'device', 'sequence', 'previous', 'hash'];

/** Which kind of line it is, or null when it is none, or its shape is wrong. */
export function kindOf(line) {
  if (!isObject(line) || Object.keys(line).length !== 1) return null;
  const [kind] = Object.keys(line);
  const it = line[kind];
  if (!isObject(it)) return null;
  if (kind === 'file')
    return hasOnly(it, ['hash', 'name', 'mediaType', 'sizeBytes']) &&
      HASH.test(it.hash) &&
      isText(it.name) &&
      isCount(it.sizeBytes)
      ? kind
      : null;
  if (!(kind in RULES) || !Object.hasOwn(RULES, kind)) return null;
  const placed =
    ID.test(it.id) &&
    DEVICE.test(it.device) &&
    isCount(it.sequence) &&
    (it.previous === '' || HASH.test(it.previous)) &&
    HASH.test(it.hash);
  if (!placed) return null;
  if (kind === 'bare') return hasOnly(it, PLACE) ? kind : null;
  const described =
    Number.isSafeInteger(it.at) && typeof it.author === 'string' && isCount(it.version) && isText(it.subject, 200);
  if (!described) return null;
  if (kind === 'entry')
    return isObject(it.happening) &&
      typeof it.happening.kind === 'string' &&
      !('content' in it) &&
      !('rows' in it) &&
      (!('salt' in it) || /^[0-9a-f]{32}$/.test(it.salt))
      ? kind
      : null;
  if ('happening' in it || 'salt' in it) return null;
  if (kind === 'held') return HASH.test(it.content) ? kind : null;
  const { row } = it;
  return !('content' in it) &&
    isCount(it.rows) &&
    isObject(row) &&
    hasOnly(row, ['index', 'lot', 'salt', 'path']) &&
    isCount(row.index) &&
    isObject(row.lot) &&
    /^[0-9a-f]{32}$/.test(row.salt) &&
    Array.isArray(row.path) &&
    row.path.length <= 40 &&
    row.path.every((step) => HASH.test(step))
    ? kind
    : null;
}
