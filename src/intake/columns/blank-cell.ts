/** What people and programs put into a cell that has no value. "Unknown" is not among them: it says something. */
const NOTHING = /^(?:|-+|–|—|n\/?a|#n\/a|null|nil|none|tbd|tba|\?+)$/i;
/** What such a cell can begin with; nearly every cell that states something begins otherwise, and is settled by this. */
const FIRST = new Set('-–—nNtT?# \t\r\n\u00a0\u200b\ufeff');

/** Whether a cell states nothing. */
export function isBlankCell(cell: string | undefined): boolean {
  if (cell === undefined || cell === '') return true;
  if (cell.length >= 20 || !FIRST.has(cell.charAt(0))) return false;
  return NOTHING.test(cell.replace(/[\s\u200b\ufeff]/g, ''));
}

/**
 * Whether a cell for the title is empty. A lot without a title is taken as clean, so words that stand for “nobody knows” do
 * not count as empty here: they say that the title is not known.
 */
export const isEmptyTitle = (cell: string): boolean => /^[\s\u200b\ufeff–—-]*$/.test(cell);
