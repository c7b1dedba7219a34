import { NotApplicable } from '../lib/case.mjs';
import { textOf } from '../lib/pack.mjs';

/** The very text of one line is changed; its value for the attacker's own arithmetic stays. */
export function respellLine(it, { entry, line = 'entry', from, to, close }) {
  const holder = lineOf(it, line, entry);
  const text = textOf(holder.get());
  const raw = text.replace(new RegExp(from), to);
  if (raw === text) throw new NotApplicable(`the line has no ${from}`);
  holder.set({ value: holder.get().value, raw });
  return it.close({ header: 'keep', ...close });
}

function lineOf(it, name, entry) {
  if (name === 'entry') {
    const at = it.one(entry);
    return { get: () => it.rows[at], set: (row) => (it.rows[at] = row) };
  }
  const holder = it.target === 'pack' ? it.pack : it.backup;
  const key = it.target === 'pack' ? 'head' : 'header';
  return { get: () => holder[key], set: (row) => (holder[key] = row) };
}

/** A line of one's own goes in among the others. */
export function putLine(it, { text, repeat = 1, where = 'middle', close }) {
  // Many lines are one row with line feeds in it: a call takes only so many arguments.
  const row = { value: safeValue(text), raw: Array(repeat).fill(text).join('\n') };
  const at = where === 'first' ? 0 : where === 'last' ? it.rows.length : Math.floor(it.rows.length / 2);
  it.rows.splice(at, 0, row);
  return it.close({ header: 'keep', ...close });
}

function safeValue(raw) {
  try {
    const value = JSON.parse(raw);
    return typeof value === 'object' && value !== null ? value : {};
  } catch {
    return {};
  }
}

/** One line is replaced by a text. */
export function replaceLine(it, { entry, text, close }) {
  const at = it.one(entry);
  it.rows[at] = { value: {}, raw: text };
  return it.close({ header: 'keep', ...close });
}

/** One field is made huge, deep or many. */
export function bomb(it, { kind, size, rehash = false, close }) {
  const at = it.one({ form: 'entry', nth: 1 });
  const inner = it.get(at);
  const text = JSON.stringify(
    it.target === 'pack' ? { entry: { ...inner, happening: '@' } } : { ...inner, happening: '@' },
  );
  const payload = {
    'deep lists': () => `${'['.repeat(size)}${']'.repeat(size)}`,
    'deep objects': () => `${'{"a":'.repeat(size)}1${'}'.repeat(size)}`,
    'long text': () => `{"kind":"lot-changed","set":{"notes":"${'a'.repeat(size)}"},"clear":[],"evidence":{}}`,
    'many members': () => `{${Array.from({ length: size }, (_, i) => `"m${i}":${i}`).join(',')}}`,
    'many digits': () => `{"kind":"lot-changed","set":{"priceNow":${'9'.repeat(size)}},"clear":[],"evidence":{}}`,
  }[kind]();
  if (rehash) {
    it.set(at, { ...inner, happening: JSON.parse(payload) });
    it.relink(at);
    return it.close(close);
  }
  it.rows[at] = { value: it.rows[at].value, raw: text.replace('"@"', () => payload) };
  return it.close({ header: 'keep', ...close });
}
