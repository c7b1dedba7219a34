import { altered, deep, NotApplicable, withDeep } from '../lib/case.mjs';
import { innerOf } from '../lib/chain.mjs';

/** A field of the head of a pack or the header of a backup. */
export function setHead(it, { path, to, close = { header: 'keep' } }) {
  const holder = it.target === 'pack' ? it.pack : it.backup;
  const name = it.target === 'pack' ? 'head' : 'header';
  const { value } = holder[name];
  if (deep(value, path) === undefined && typeof to === 'object' && !('literal' in to))
    throw new NotApplicable(`the head has no ${path}`);
  holder[name] = { value: withDeep(value, path, altered(deep(value, path), to, it.random)) };
  return it.close(close);
}

/** The heads: one goes, one comes, one is there twice, all go. */
export function setHeads(it, { how, close = { header: 'keep' } }) {
  const holder = it.target === 'pack' ? it.pack : it.backup;
  const name = it.target === 'pack' ? 'head' : 'header';
  const { value } = holder[name];
  const [first, ...rest] = value.heads;
  const heads = {
    'first gone': rest,
    'all gone': [],
    'one more': [...value.heads, { device: 'ZZZZZZZZZZ', sequence: 4, hash: it.random(32).toString('hex') }],
    'first twice': [first, ...value.heads],
    'first twice, differing': [{ ...first, hash: it.random(32).toString('hex') }, ...value.heads],
    'first one back': [{ ...first, ...beforeLast(it, first) }, ...rest],
  }[how];
  holder[name] = { value: { ...value, heads } };
  return it.close(close);
}

function beforeLast(it, { device }) {
  const { sequence, hash } = innerOf(it.rows[it.places(device).at(-2)], it.target);
  return { sequence, hash };
}

/** The pack is said to be of another lot of the same journal. */
export function setLot(it, { close }) {
  const other = it.rows
    .map((row) => innerOf(row, 'pack')?.subject)
    .find((subject) => subject?.startsWith('lot:') && subject !== `lot:${it.about.lot}`);
  if (other === undefined) throw new NotApplicable('no other lot is named');
  const { value } = it.pack.head;
  it.pack.head = { value: { ...value, lot: other.slice(4) } };
  return it.close(close);
}

/** The last line, which seals a pack or ends a backup. */
export function setSeal(it, { how, close }) {
  const holder = it.target === 'pack' ? it.pack : it.backup;
  const name = it.target === 'pack' ? 'seal' : 'end';
  const was = holder[name];
  const after = it.target === 'pack' ? it.pack.lines : it.backup.files.length > 0 ? it.backup.files : it.backup.entries;
  if (how === 'gone') holder[name] = null;
  if (how === 'twice') after.push(was);
  if (how === 'garbage') {
    holder[name] = { value: was.value, raw: '{"' };
    return it.close(it.target === 'pack' ? { seal: 'keep' } : { checksum: 'keep' });
  }
  if (how === 'upper') {
    const raw = JSON.stringify(was.value).replace(/[0-9a-f]{64}/g, (hash) => hash.toUpperCase());
    holder[name] = { value: was.value, raw };
    return it.close(it.target === 'pack' ? { seal: 'keep' } : { checksum: 'keep' });
  }
  if (how === 'of nothing') {
    const raw = JSON.stringify(was.value).replace(
      /[0-9a-f]{64}/g,
      'e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855',
    );
    holder[name] = { value: was.value, raw };
    return it.close(it.target === 'pack' ? { seal: 'keep' } : { checksum: 'keep' });
  }
  if (how === 'more in it') holder[name] = { value: { ...was.value, note: 'checked by the sale' } };
  return it.close(close);
}
