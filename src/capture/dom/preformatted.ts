/** A piece of text whose line breaks and blanks are kept: a line with its parts, or a table set in columns. */
export type Block =
  | { readonly kind: 'line'; readonly parts: readonly string[] }
  | { readonly kind: 'table'; readonly rows: readonly (readonly string[])[] };

const LEAST_ROWS = 3;
const LEAST_COLUMNS = 3;
const MOST_LINES = 4000;

/** Takes text that is set with blanks apart: columns become the cells of a table, leaders of dots a colon. */
export function blocksOf(text: string): readonly Block[] {
  const lines = text.replace(/\t/g, '    ').split('\n').slice(0, MOST_LINES);
  const blocks: Block[] = [];
  for (let at = 0; at < lines.length; ) {
    const end = endOfTable(lines, at);
    const rows = end - at >= LEAST_ROWS ? cellsOf(lines.slice(at, end)) : null;
    if (rows !== null) {
      blocks.push({ kind: 'table', rows });
      at = end;
      continue;
    }
    const parts = partsOf(lines[at] ?? '');
    if (parts.length > 0) blocks.push({ kind: 'line', parts });
    at++;
  }
  return blocks;
}

const isRule = (line: string): boolean => /^[\s|+]*(?:[-=_]{2,}[\s|+]+){2,}[-=_]{2,}[\s|+]*$/.test(line);
const hasColumns = (line: string): boolean =>
  (line.trim().match(/\S {2,}(?=\S)/g)?.length ?? 0) >= LEAST_COLUMNS - 1 && !/[\p{L}\d)#] ?\.{3,} /u.test(line);

/** Lines set in columns one under the other; a blank line or one of plain words ends them. */
function endOfTable(lines: readonly string[], from: number): number {
  let end = from;
  while (end < lines.length && (hasColumns(lines[end] ?? '') || isRule(lines[end] ?? ''))) end++;
  return end;
}

function cellsOf(lines: readonly string[]): readonly (readonly string[])[] | null {
  const rule = lines.find(isRule);
  const data = lines.filter((line) => !isRule(line));
  const starts = rule === undefined ? blankColumns(data) : [...rule.matchAll(/[-=_]{2,}/g)].map((match) => match.index);
  if (starts.length < LEAST_COLUMNS || data.length < LEAST_ROWS - 1) return null;
  return data.map((line) => {
    const cuts = starts.map((start, at) => (at === 0 ? 0 : cutBefore(line, start, starts[at - 1] ?? 0)));
    return cuts.map((cut, at) => line.slice(cut, cuts[at + 1] ?? line.length).trim());
  });
}

/** Where a column is cut in a line: never within a word that reaches over its edge. */
function cutBefore(line: string, start: number, least: number): number {
  let cut = start;
  while (cut > least + 1 && /\S/.test(line[cut] ?? ' ') && /\S/.test(line[cut - 1] ?? ' ')) cut--;
  return cut > least + 1 ? cut : start;
}

/** Where each column begins: after blanks that run through every line. */
function blankColumns(lines: readonly string[]): readonly number[] {
  const width = Math.max(...lines.map((line) => line.length));
  const starts: number[] = [];
  let blanks = 2;
  for (let at = 0; at < width; at++) {
    if (lines.every((line) => (line[at] ?? ' ') === ' ')) blanks++;
    else {
      if (blanks >= 2 || (blanks === 1 && lines.length >= 5)) starts.push(at);
      blanks = 0;
    }
  }
  return starts;
}

/** `Lot ........ 58      Run ...... C-22` are two facts, each named. */
function partsOf(line: string): readonly string[] {
  return line
    .replace(/ ?\.{3,} */g, ': ')
    .split(/(?<!:) {3,}/)
    .map((part) => part.trim())
    .filter((part) => part !== '' && !/^[-=_*~#]{3,}$/.test(part));
}
