import { type Outcome, ok, refuse } from '../../domain/outcome.ts';

/** The parts of a pack's page, still unchecked. */
export interface OpenedPack {
  /** The page up to the data: what people read. */
  readonly page: string;
  /** What stands behind the data; nothing may be added there. */
  readonly after: string;
  /** The lines of data, as they are in the page. */
  readonly lines: readonly string[];
  /** The files in the page, by the hash that their place states: their base 64. */
  readonly files: ReadonlyMap<string, string>;
}

/** Where the data begin and end in the page. */
export const DATA_START = '<pre id="headroom-evidence">';
export const DATA_END = '</pre>';
/** Everything behind the data. */
export const PACK_TAIL = `${DATA_END}\n</main>\n</body>\n</html>\n`;

const FILE = /<(?:img|a) id="file-([0-9a-f]{64})" (?:src|href)="data:[a-z0-9.+/-]+;base64,/g;

/** Takes a page apart without running anything in it. */
export function openPack(html: string): Outcome<OpenedPack> {
  const start = html.lastIndexOf(DATA_START);
  const end = start === -1 ? -1 : html.indexOf(DATA_END, start);
  if (end === -1) return refuse('not-a-pack', 'This file is not a Headroom evidence pack, or its end is cut off.');
  const data = html.slice(start + DATA_START.length, end);
  const page = html.slice(0, start);
  const files = new Map<string, string>();
  for (const found of page.matchAll(FILE)) {
    // Cut out by hand: an expression over tens of MB takes seconds.
    const from = found.index + found[0].length;
    files.set(found[1] ?? '', page.slice(from, page.indexOf('"', from)));
  }
  return ok({ page, after: html.slice(end), lines: data.split('\n').filter(Boolean).map(fromHtml), files });
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
