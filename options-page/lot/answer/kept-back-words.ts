/** Why something is left over between the max bid and the last dollar that the profit rule would allow. */
export function keptBackWords(why: 'slack' | 'risk-cap' | 'sealed'): string {
  switch (why) {
    case 'risk-cap':
      return 'On average there is room for more, but then the chance of losing money would be over your limit in Setup › Money rules.';
    case 'sealed':
      return 'The winner pays his own bid. A lower bid wins less often and leaves more. Here the chance of winning times the profit is largest.';
    default:
      return 'Left over because bids move by increments: one more would not meet your minimum profit.';
  }
}
