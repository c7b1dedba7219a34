/** What a spreadsheet would run as a formula (OWASP, CSV injection), full-width signs included. */
const FORMULA = /^[=+\-@\t\r\n＝＋－＠]/;

/** What a spreadsheet would turn into something else: it drops leading zeros, and makes numbers and dates of codes. */
const CHANGED =
  /^(?:0\d+|\d{12,}|\d+(?:\.\d+)?e[+-]?\d+|\d{1,4}[-/]\d{1,2}(?:[-/]\d{1,4})?|\d{1,2}:\d{2}|\d+(?:\.\d+)?%|true|false)$/i;

/**
 * Text for a cell that a spreadsheet may open: an apostrophe goes in front of what it would run or change. Only for text;
 * numbers are written as numbers, negative ones too. `unguardCell` takes exactly what was put in front away again.
 */
export const guardCell = (text: string): string => (needsGuard(text) ? `'${text}` : text);

export const unguardCell = (cell: string): string =>
  cell.startsWith("'") && needsGuard(cell.slice(1)) ? cell.slice(1) : cell;

/** Text that begins with an apostrophe itself needs one more where taking one off would leave something guarded. */
function needsGuard(text: string): boolean {
  return FORMULA.test(text) || CHANGED.test(text) || (text.startsWith("'") && needsGuard(text.slice(1)));
}
