/** Where a click on a notice leads: a lot's own notice to its worksheet, any other to the list. */
export function routeOfNotice(id: string): string {
  const lot = /\b([0-9A-HJKMNP-TV-Z]{26})\b/.exec(id)?.[1];
  return lot === undefined ? '#/lots' : `#/lot/${lot}`;
}
