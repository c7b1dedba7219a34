/** What people and programs put into a cell that has no value. "Unknown" is not among them: it says something. */
const NOTHING = /^(?:|-+|–|—|n\/?a|#n\/a|null|nil|none|tbd|tba|\?+)$/i;

/** Whether a cell states nothing. */
export function isBlankCell(cell: string | undefined): boolean {
  if (cell === undefined || cell === '') return true;
  return cell.length < 20 && NOTHING.test(cell.replace(/[\s\0\u200b\ufeff]/g, ''));
}
