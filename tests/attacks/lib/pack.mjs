import { sha256 } from './hash.mjs';

const START = '<pre id="headroom-evidence">';
const TAIL = '</pre>\n</main>\n</body>\n</html>\n';
const ESCAPES = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;', "'": '&#39;' };

/** A line of JSON: its value, and the very text where an attack needs one. */
export const line = (value, raw) => ({ value, raw });
export const textOf = ({ value, raw }) => raw ?? JSON.stringify(value);

/**
 * The parts of a pack: the page before the data, the head, the lines of the chains and the files, the seal, what follows.
 * @throws Error when it isn't laid out as an honest one is
 */
export function openPack(text) {
  const start = text.lastIndexOf(START);
  if (start < 0 || !text.endsWith(TAIL)) throw new Error('the honest pack is not laid out as the attacks know it');
  const data = fromHtml(text.slice(start + START.length, -TAIL.length));
  const rows = data.split('\n').slice(0, -1);
  const lines = rows.map((row) => line(JSON.parse(row)));
  const head = lines.shift();
  const seal = lines.pop();
  // An apostrophe needs no name in HTML; the attacks write it as the sample does.
  const escapes = text.slice(start).includes("'") ? { ...ESCAPES, "'": "'" } : ESCAPES;
  return { before: text.slice(0, start), start: START, head, lines, seal, after: TAIL, escapes };
}

/** The text again. The seal is made anew unless it is to be kept: anyone can make one. */
export function closePack(pack, { seal = 'anew' } = {}) {
  const rows = [pack.head, ...pack.lines].filter(Boolean).map((row) => `${textOf(row)}\n`);
  const last =
    seal === 'anew' && pack.seal
      ? line({
          ...pack.seal.value,
          seal: { ...pack.seal.value.seal, page: sha256(pack.before), data: sha256(rows.join('')) },
        })
      : pack.seal;
  if (last) rows.push(`${textOf(last)}\n`);
  return pack.before + pack.start + rows.map((row) => toHtml(row, pack.escapes)).join('') + pack.after;
}

export const toHtml = (text, escapes = ESCAPES) => text.replace(/[&<>"']/g, (character) => escapes[character]);
const fromHtml = (text) =>
  text.replace(/&(?:lt|gt|quot|#39|amp);/g, (name) => Object.keys(ESCAPES).find((key) => ESCAPES[key] === name));
