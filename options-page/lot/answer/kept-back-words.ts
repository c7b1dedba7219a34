/** Why something is left over between the max bid and the last dollar that the profit rule would allow. */
export function keptBackWords(why: 'slack' | 'risk-cap' | 'sealed'): string {
  switch (why) {
    case 'risk-cap':
      return 'On average there would be room for more, but then money would be lost more often than your limit in Setup › Money rules allows.';
    case 'sealed':
      return 'The winner pays his own bid. A little lower wins less often and leaves more; here the chance of winning times what is left is largest.';
    default:
      return 'What is left because the sale moves in steps: one step more would not meet the least profit.';
  }
}
