/** "1 lot", "3 lots", "1,204 lots". */
export const countWords = (n: number, one: string, many: string): string =>
  `${n.toLocaleString('en-US')} ${n === 1 ? one : many}`;
