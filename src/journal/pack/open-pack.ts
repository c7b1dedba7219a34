import { type Outcome, ok, refuse } from '../../domain/outcome.ts';

/** The parts of a pack's page, still unchecked. */
export interface OpenedPack {
  /** The page up to the data: what people read. */
  readonly page: string;
  /** What stands behind the data; nothing may be added there. */
  readonly after: string;
  /** The lines of data, as they are in the page; null where one is spelled in a way of its own. */
  readonly lines: readonly (string | null)[];
  /** The files in the page, in their order. */
  readonly files: readonly FileInPage[];
  /** How many places of the page say that they hold a file, spelled in whichever way. */
  readonly filePlaces: number;
}

/** A file in the page, by what its place states of it. */
export interface FileInPage {
  readonly hash: string;
  readonly mediaType: string;
  readonly base64: string;
}

/** Where the data begin and end in the page. */
export const DATA_START = '<pre id="headroom-evidence">';
export const DATA_END = '</pre>';
/** Everything behind the data. */
export const PACK_TAIL = `${DATA_END}\n</main>\n</body>\n</html>\n`;

/** The same as a browser might read it: text that people typed is never among these, because its `<` is written out. */
const ANY_START = /<pre\b[^>]*headroom-evidence/gi;
const FILE = /<(?:img|a) id="file-([0-9a-f]{64})" (?:src|href)="data:([a-z0-9.+/-]+);base64,/g;
const ANY_FILE = /\bid\s*=\s*["']?\s*file-[0-9a-f]{64}/gi;

/** Takes a page apart without running anything in it. */
export function openPack(html: string): Outcome<OpenedPack> {
  const start = html.lastIndexOf(DATA_START);
  const end = start === -1 ? -1 : html.indexOf(DATA_END, start);
  if (end === -1) return refuse('not-a-pack', 'This file is not a Headroom evidence pack, or its end is cut off.');
  if (html.match(ANY_START)?.length !== 1)
    return refuse('two-packs', 'This file holds the data of more than one pack, so it can’t be told which is meant.');
  const data = html.slice(start + DATA_START.length, end);
  const page = html.slice(0, start);
  const files = [...page.matchAll(FILE)].map((found) => {
    // Cut out by hand: an expression over tens of MB takes seconds.
    const from = found.index + found[0].length;
    return { hash: found[1] ?? '', mediaType: found[2] ?? '', base64: page.slice(from, page.indexOf('"', from)) };
  });
  return ok({
    page,
    after: html.slice(end),
    lines: linesIn(data),
    files,
    filePlaces: page.match(ANY_FILE)?.length ?? 0,
  });
}

/** Each line ends with a line feed, and none is empty. */
function linesIn(data: string): (string | null)[] {
  const lines = data.split('\n');
  const whole = lines.pop() === '';
  const read = lines.map((line) => {
    const plain = fromHtml(line);
    return line !== '' && toHtml(plain) === line ? plain : null;
  });
  return whole ? read : [...read, null];
}

/** A text as HTML: nothing in it is markup any more, wherever it came from. */
export function toHtml(text: string): string {
  return text.replace(/[&<>"']/g, (character) => ESCAPES[character] ?? character);
}

function fromHtml(html: string): string {
  return html.replace(/&(?:amp|lt|gt|quot|#39);/g, (entity) => CHARACTERS[entity] ?? entity);
}

const ESCAPES: Readonly<Record<string, string>> = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;',
  "'": '&#39;',
};
const CHARACTERS: Readonly<Record<string, string>> = Object.fromEntries(
  Object.entries(ESCAPES).map(([character, entity]) => [entity, character]),
);
