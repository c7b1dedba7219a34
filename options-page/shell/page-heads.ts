const FONT = 'font: 9pt sans-serif; color: #333';

/** The style sheet that writes a title, the day and the number of the page into the margins of every printed page (CSS Paged Media). */
export function pageHeads(title: string, day: string): string {
  return `@page {
  @top-left { content: ${quoted(title)}; ${FONT} }
  @top-right { content: ${quoted(day)}; ${FONT} }
  @bottom-right { content: counter(page) " of " counter(pages); ${FONT} }
}`;
}

/** A string of a style sheet: whatever is no plain letter, figure or blank is written as its number (CSS Syntax). */
const quoted = (text: string): string =>
  `"${text.replace(/[^\p{L}\p{N} ]/gu, (c) => `\\${(c.codePointAt(0) ?? 32).toString(16)} `)}"`;
