import Papa from 'papaparse';

export interface SplitOptions {
  readonly delimiter: string;
  readonly newline: '\n' | '\r';
  /** False: quote marks are characters like any other. */
  readonly quoted?: boolean;
  /** True: the last row may go on after this piece of text, and is left. */
  readonly leaveLast?: boolean;
  /** The most rows. */
  readonly most?: number;
}

/**
 * Splits a piece of text, which begins at the beginning of a row, into cells: the parser below the library's own
 * streaming, which would not let the caller decide when to go on.
 */
export function splitCells(text: string, options: SplitOptions): Papa.ParseResult<string[]> {
  const { delimiter, newline, quoted = true, leaveLast = false, most } = options;
  const parser = new Papa.Parser({
    delimiter,
    newline,
    ...(quoted ? {} : { fastMode: true }),
    ...(most === undefined ? {} : { preview: most }),
  });
  return parser.parse(text, 0, leaveLast);
}
