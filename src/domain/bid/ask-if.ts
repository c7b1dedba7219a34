import type { BidAsk } from './bid-ask.ts';

/** One question, or none. */
export function askIf(ask: BidAsk | false | undefined): readonly BidAsk[] {
  return ask === undefined || ask === false ? [] : [ask];
}
