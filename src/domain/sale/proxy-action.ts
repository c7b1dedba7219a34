import type { Cents } from '../money/cents.ts';
import type { BidAction } from './bid-action.ts';

/** What a newly typed proxy amount means beside the one that stands; null when it is the same. */
export function proxyAction(standing: Cents | undefined, amount: Cents | undefined): BidAction['action'] | null {
  if (amount === standing) return null;
  if (amount === undefined) return 'proxy-withdrawn';
  if (standing === undefined) return 'proxy-placed';
  return amount > standing ? 'proxy-raised' : 'proxy-cut';
}
