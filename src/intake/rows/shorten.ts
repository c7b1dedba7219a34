/** At most `most` code units with an ellipsis at the end; never cut through a character that takes two of them. */
export function shorten(text: string, most: number): string {
  if (text.length <= most) return text;
  const cut = text.slice(0, most - 1);
  return `${/[\ud800-\udbff]$/.test(cut) ? cut.slice(0, -1) : cut}…`;
}
