import { type HeadedColumns, headedColumns, headedRow } from './fee-columns.ts';
import { feeAmounts, feeRow, priceSpan, withoutGaps } from './fee-row.ts';
import { bandsOf, type LineFault, type ReadBand, type StatedRow } from './fee-rows-to-bands.ts';
import { type FeeToken, feeTokens } from './fee-table-tokens.ts';

/** What a pasted fee table says, line by line. Only without faults may the bands be used. */
export interface FeeTableReading {
  /** In order of price; as far as they could be read. */
  readonly bands: readonly ReadBand[];
  /** In order of the lines, which are counted from 1. */
  readonly faults: readonly LineFault[];
  /** Lines that say nothing about a fee: headings, notes. */
  readonly leftOut: readonly { readonly line: number; readonly text: string }[];
}

/**
 * Reads a fee table copied from a spreadsheet, a web page or a PDF: "0–499.99  $100", "$10,000 and up  2.5% (min $250)",
 * columns with or without a heading, two printed columns side by side, prices and fees on alternate lines.
 */
export function readFeeTable(text: string): FeeTableReading {
  const lines = text.split(/\r\n|\r|\n/);
  const leftOut: { line: number; text: string }[] = [];
  const stated: StatedRow[] = [];
  const faults: LineFault[] = [];
  let heading: HeadedColumns | undefined;
  let waiting: { readonly line: number; readonly tokens: readonly FeeToken[] } | undefined;

  const take = (line: number, outcome: ReturnType<typeof feeRow>) => {
    if (outcome.ok) stated.push({ line, row: outcome.value });
    else faults.push({ line, message: outcome.message });
  };
  const giveUpWaiting = () => {
    if (waiting !== undefined) take(waiting.line, feeRow(waiting.tokens));
    waiting = undefined;
  };

  lines.forEach((content, index) => {
    const line = index + 1;
    if (content.trim() === '') return;
    if (heading === undefined) {
      heading = headedColumns(content);
      if (heading?.fault !== undefined) faults.push({ line, message: heading.fault });
    }
    if (!/\d/.test(content) && !/^\s*(no fee|free|none|waived)\s*$/i.test(content)) {
      leftOut.push({ line, text: content.trim() });
      return;
    }
    const headed = heading && headedRow(content, heading);
    if (headed !== undefined) {
      take(line, headed);
      return;
    }
    const tokens = feeTokens(content);
    if (waiting !== undefined && isFeeAlone(tokens)) {
      take(waiting.line, feeRow([...waiting.tokens, ...tokens]));
      waiting = undefined;
      return;
    }
    giveUpWaiting();
    if (isPriceAlone(tokens)) waiting = { line, tokens };
    else for (const part of rowsSideBySide(tokens)) take(line, feeRow(part));
  });
  giveUpWaiting();

  const inOrder = bandsOf(stated);
  // A gap beside a line that could not be read is that line's fault, and not worth a second sentence.
  return { bands: inOrder.bands, faults: faults.length > 0 ? faults : inOrder.faults, leftOut };
}

/** A PDF often breaks between the columns: the prices come on one line and their fee on the next. */
function isPriceAlone(tokens: readonly FeeToken[]): boolean {
  const span = priceSpan(tokens);
  if (!span.ok || span.value.rest.length > 0) return false;
  return withoutGaps(tokens).length > 1;
}

function isFeeAlone(tokens: readonly FeeToken[]): boolean {
  if (tokens.some((token) => token.kind === 'to' || token.kind === 'onward' || token.kind === 'or-less')) return false;
  return feeAmounts(tokens).ok;
}

/** Two or more printed columns read as one line: each `a to b` starts a row of its own. */
function rowsSideBySide(tokens: readonly FeeToken[]): readonly (readonly FeeToken[])[] {
  const dense = withoutGaps(tokens);
  const starts = dense.flatMap((token, i) =>
    token.kind === 'money' && dense[i + 1]?.kind === 'to' && dense[i + 2]?.kind === 'money' ? [i] : [],
  );
  if (starts.length < 2 || starts[0] !== 0) return [tokens];
  return starts.map((start, i) => dense.slice(start, starts[i + 1]));
}
