import { closeBackup, fitHeader, openBackup } from './backup.mjs';
import { formOf, innerOf, placesOf, rechain, withInner } from './chain.mjs';
import { followPage } from './follow-page.mjs';
import { hashTools } from './hash.mjs';
import { closePack, openPack } from './pack.mjs';

/** An attack that this sample has nothing for; says what is missing. */
export class NotApplicable extends Error {}

/**
 * An honest sample, opened to be altered. `rows` are its entries in the order of the file, in a pack also the lines of its
 * files; they are changed in place.
 * @param about what about.json says of the sample
 * @param other gives the text of another sample, by its name
 * @param page how far the readable page of a pack follows what was done to its data; see follow-page.mjs
 */
export function openCase(order) {
  const { target, text, about, tools, other, random, page } = order;
  const part = target === 'pack' ? { pack: openPack(text) } : { backup: openBackup(text) };
  const rows = target === 'pack' ? part.pack.lines : part.backup.entries;
  const it = { target, text, about, rows, ...part, hashes: hashTools(tools), tools: tools ?? {}, other, random };
  Object.assign(it, {
    device: (role) => deviceOf(it, role),
    get: (at) => innerOf(rows[at], target),
    set(at, inner) {
      rows[at] = withInner(rows[at], target, inner);
    },
    form: (at) => formOf(rows[at], target),
    places: (device) => placesOf(it, device),
    /** All entries of a kind and more, by their index. @throws NotApplicable when there is none */
    all: (wanted) => select(it, wanted),
    one: (wanted) => select(it, wanted).at(wanted.nth ?? 0),
    /** Links the chain anew from this row to its end. */
    relink(at, options) {
      const { device } = innerOf(rows[at], target);
      rechain(it, device, placesOf(it, device).indexOf(at), options);
    },
    relinkAll(device, options) {
      rechain(it, device, 0, options);
    },
    open: (name) => openCase({ ...order, text: other(name) }),
    close(options) {
      if (page && it.pack) it.pack.before = followPage(it, before, page);
      if (target === 'pack') return closePack(it.pack, options);
      if ((options?.header ?? 'anew') === 'anew') it.fitHeader();
      return closeBackup(it.backup, { ...options, header: 'keep' });
    },
    /** The header of a backup follows its entries, and is signed as far as the forger can. */
    fitHeader() {
      if (!it.backup) return;
      fitHeader(it.backup);
      it.hashes.signAnew(it);
    },
  });
  it.signed = signedHeads(it);
  const before = page && it.pack ? it.rows.map((row) => row.value) : [];
  return it;
}

function deviceOf(it, role) {
  const noted = it.about.noted[`${role}-last`] ?? it.about.noted[role];
  if (noted !== undefined) return noted.split(':')[0];
  const devices = [...new Set(it.rows.map((row) => formOf(row, it.target) && innerOf(row, it.target).device))].filter(
    Boolean,
  );
  if (devices.includes(role)) return role;
  if (role === 'buyer' && devices.length > 0) return devices[0];
  throw new NotApplicable(`the sample has no device of the ${role}`);
}

/**
 * @param wanted kind: of what happened; form: entry, held or bare; device: by role; lot: `own` (the pack's) or `other`;
 * sequence; words: a text that the JSON of what happened holds
 */
function select(it, wanted) {
  const device = wanted.device && deviceOf(it, wanted.device);
  const found = [...it.rows.keys()].filter((at) => {
    const form = formOf(it.rows[at], it.target);
    if (form === null || (wanted.form && form !== wanted.form)) return false;
    const inner = innerOf(it.rows[at], it.target);
    if (device && inner.device !== device) return false;
    if (wanted.kind && inner.happening?.kind !== wanted.kind) return false;
    if (wanted.sequence && inner.sequence !== wanted.sequence) return false;
    if (wanted.words && !JSON.stringify(inner.happening ?? {}).includes(wanted.words)) return false;
    if (wanted.lot && (inner.subject === `lot:${it.about.lot}`) !== (wanted.lot === 'own')) return false;
    return true;
  });
  if (found.length === 0) throw new NotApplicable(`the sample has nothing that fits ${JSON.stringify(wanted)}`);
  return found;
}

/** Reads or writes a value deep inside another, by a path such as `happening.result.hammerCents`. */
export function deep(value, path) {
  return path.split('.').reduce((part, name) => part?.[name], value);
}

export function withDeep(value, path, to) {
  const [name, ...rest] = path.split('.');
  const copy = Array.isArray(value) ? [...value] : { ...value };
  if (rest.length > 0) copy[name] = withDeep(copy[name] ?? {}, rest.join('.'), to);
  else if (to === undefined) delete copy[name];
  else copy[name] = to;
  return copy;
}

/** A changed value: a literal, or how to make it from the one that was there. */
export function altered(was, how, random) {
  if (typeof how !== 'object' || how === null || Array.isArray(how)) return how;
  if ('literal' in how) return how.literal;
  if ('add' in how) return was + how.add;
  if ('drop' in how) return undefined;
  if ('replace' in how) return was.replace(how.replace[0], how.replace[1]);
  if ('wrap' in how) return how.wrap[0] + was + how.wrap[1];
  if ('upper' in how) return was.toUpperCase();
  if ('text' in how) return String(was);
  if ('hex' in how) return random(how.hex).toString('hex');
  if ('flip' in how) return flipped(was);
  throw new Error(`unknown change ${JSON.stringify(how)}`);
}

/** Another value of the same look. */
export function flipped(was) {
  if (typeof was === 'number') return was + 1;
  if (typeof was === 'boolean') return !was;
  if (typeof was !== 'string') return 'x';
  if (was === '') return '0';
  const last = was.at(-1);
  const other = /[0-9]/.test(last) ? String((Number(last) + 1) % 10) : last === 'a' ? 'b' : 'a';
  return was.slice(0, -1) + other;
}

/** The heads that were signed when the sample was opened; a forger leaves those alone that still fit. */
function signedHeads({ pack, backup }) {
  const heads = (pack ? pack.head : backup.header).value?.heads ?? [];
  return new Set(heads.filter(({ signed }) => signed).map(({ device, hash }) => `${device} ${hash}`));
}
