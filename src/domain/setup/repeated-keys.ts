/** A field that stands twice in the same group of a JSON text. */
export interface RepeatedKey {
  readonly key: string;
  /** Counted from 1. */
  readonly lines: readonly [first: number, second: number];
}

/** A string, or a mark that opens, closes or separates. */
const PIECES = /"(?:[^"\\]|\\.)*"|[{}[\],:]/g;

/**
 * Fields that stand twice in one group. The standard leaves open which of the two counts (RFC 8259, section 4), and reading
 * drops one of them without a word.
 * @param text valid JSON
 */
export function repeatedKeys(text: string): readonly RepeatedKey[] {
  const found: RepeatedKey[] = [];
  const groups: Map<string, number>[] = [];
  let waiting: { readonly written: string; readonly at: number } | undefined;
  for (const { 0: piece, index } of text.matchAll(PIECES)) {
    if (piece === '{' || piece === '[') groups.push(new Map());
    else if (piece === '}' || piece === ']') groups.pop();
    else if (piece === ':' && waiting !== undefined) {
      const key = String(JSON.parse(waiting.written));
      const group = groups.at(-1);
      const before = group?.get(key);
      if (before !== undefined) found.push({ key, lines: [lineAt(text, before), lineAt(text, waiting.at)] });
      group?.set(key, waiting.at);
    }
    waiting = piece.startsWith('"') ? { written: piece, at: index } : undefined;
  }
  return found;
}

const lineAt = (text: string, at: number): number => text.slice(0, at).split('\n').length;
