import { generateKeyPairSync, sign } from 'node:crypto';
import { rootOf, sha256 } from './hash.mjs';

/** What the forger needs of the format beyond the chains: its signatures, and the row of a batch that is shown. */
export const tools = { signatures, stamps, shownRow, signAnew };

const { publicKey, privateKey } = generateKeyPairSync('ed25519');
const OWN_KEY = publicKey.export({ format: 'der', type: 'spki' }).subarray(-32).toString('hex');

const headsOf = (it) => (it.target === 'pack' ? it.pack.head : it.backup.header).value.heads;

function setHeads(it, heads) {
  const [part, name] = it.target === 'pack' ? [it.pack, 'head'] : [it.backup, 'header'];
  part[name] = { value: { ...part[name].value, heads } };
}
const messageOf = ({ device, sequence, hash }) => Buffer.from(`Headroom head ${device}:${sequence}:${hash}`);

/** Every head whose signature no longer fits is signed with a key of the forger's own, as a forger would. */
function signAnew(it) {
  if (!it.signed) return;
  const anew = (head) => ({
    publicKey: OWN_KEY,
    signature: sign(null, messageOf(head), privateKey).toString('hex'),
  });
  const isStale = ({ signed, device, hash }) => signed && !it.signed.has(`${device} ${hash}`);
  setHeads(
    it,
    headsOf(it).map((head) => (isStale(head) ? { ...head, signed: anew(head) } : head)),
  );
}

function signatures(it) {
  const change = (device, to) =>
    setHeads(
      it,
      headsOf(it).map((head) => (head.device === device ? to(head) : head)),
    );
  return headsOf(it)
    .filter(({ signed }) => signed)
    .map(({ device, signed }) => ({
      device,
      publicKey: Buffer.from(signed.publicKey, 'hex'),
      signature: Buffer.from(signed.signature, 'hex'),
      message: () => messageOf(headsOf(it).find((head) => head.device === device)),
      set(parts) {
        const hex = Object.fromEntries(Object.entries(parts).map(([name, bytes]) => [name, bytes.toString('hex')]));
        change(device, (head) => ({ ...head, signed: { ...head.signed, ...hex } }));
      },
      remove: () => change(device, ({ signed: _, ...head }) => head),
      ...of(it.about.signed?.[device]),
    }));
}

const of = (signed) =>
  signed && { earlier: Buffer.from(signed.earlier, 'hex'), elsewhere: Buffer.from(signed.elsewhere, 'hex') };

/** The stamps of outside authorities, and others that could stand in their place. */
function stamps(it) {
  const [part, name] = it.target === 'pack' ? [it.pack, 'head'] : [it.backup, 'header'];
  const all = () => part[name].value.stamps ?? [];
  const put = (changed) => {
    const { stamps: _, ...value } = part[name].value;
    part[name] = { value: changed.length > 0 ? { ...value, stamps: changed } : value };
  };
  const others = Object.fromEntries(
    Object.entries(it.about.stamps ?? {}).map(([how, token]) => [how, Buffer.from(token, 'base64')]),
  );
  return all().map((stamp, at) => ({
    token: Buffer.from(stamp.token, 'base64'),
    set: (token) => put(all().map((one, i) => (i === at ? { ...one, token: token.toString('base64') } : one))),
    remove: () => put(all().filter((_, i) => i !== at)),
    others,
  }));
}

/** The row of the lot in a batch; its tree has one leaf more than the batch has rows. */
function shownRow(it) {
  const at = it.rows.findIndex((row) => row.value && 'batch' in row.value);
  if (at < 0) return null;
  const put = ({ value, index, size, leafBytes, ...rest }) => {
    const { row, ...fields } = it.get(at);
    const lot = leafBytes ? { id: it.about.lot, bytes: leafBytes.toString('hex') } : (value ?? row.lot);
    const shown = { ...row, ...rest, lot, index: index ?? row.index };
    it.set(at, { ...fields, rows: size === undefined ? fields.rows : size - 1, row: shown });
  };
  const { row, rows } = it.get(at);
  return {
    value: row.lot,
    salt: row.salt,
    path: row.path,
    index: row.index,
    size: rows + 1,
    set: put,
    again(parts) {
      it.rows.splice(at + 1, 0, it.rows[at]);
      put(parts);
    },
    remove() {
      const { row: own, ...fields } = it.get(at);
      it.rows[at] = { value: { held: { ...fields, content: rootOf(own, fields.rows) } } };
    },
    elsewhere: otherBatch(row),
  };
}

/** A row with this lot's id out of a batch that the forger made up, with a path that is right there. */
function otherBatch(row) {
  const lot = { ...row.lot, facts: { ...row.lot.facts, miles: 1 } };
  return { value: lot, salt: sha256('salt').slice(0, 32), path: row.path.map((_, i) => sha256(`step ${i}`)) };
}
