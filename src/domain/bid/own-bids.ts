import type { Cents } from '../money/cents.ts';
import type { Instant } from '../time/instant.ts';
import type { OwnBid } from './bidding.ts';

/** A bid of ours that binds us. */
export interface StandingBid {
  readonly how: 'proxy' | 'live';
  readonly cents: Cents;
  /** Since when it is this amount. */
  readonly at: Instant;
  readonly by: string;
  readonly why?: string | undefined;
  /** The max bid when it was placed; null when no price worked, undefined when none was known. */
  readonly maxBidThen?: Cents | null | undefined;
  readonly closeThen?: Instant | undefined;
  /** No bid of ours stood before it. */
  readonly first: boolean;
  /** When the venue last showed that it has it. */
  readonly confirmedAt?: Instant | undefined;
}

/** What the venue said of who leads. */
export interface VenueWord {
  readonly says: 'high-bidder' | 'outbid';
  readonly at: Instant;
  readonly cents?: Cents | undefined;
}

export interface Withdrawn {
  readonly by: string;
  readonly at: Instant;
  /** What it was; undefined where none stood. */
  readonly cents?: Cents | undefined;
  /** The venue let us go. */
  readonly released: boolean;
}

export interface OwnBids {
  readonly proxy?: StandingBid | undefined;
  readonly live?: StandingBid | undefined;
  /** The larger promise of the two: what we pay at most if it wins. */
  readonly binding?: StandingBid | undefined;
  /** The proxy that was taken out, where none was placed since. */
  readonly withdrawn?: Withdrawn | undefined;
  readonly word?: VenueWord | undefined;
  /** Another amount that somebody else noted with the same time as the proxy's. */
  readonly rival?: { readonly cents: Cents; readonly by: string } | undefined;
  /** A higher proxy of another person, which a lower placing may have replaced or not. */
  readonly replaced?: { readonly cents: Cents; readonly by: string } | undefined;
}

const NONE: OwnBids = {};

/**
 * The bids of ours that bind us, after acts in the order of their times. A raise or a cut whose placing nobody noted is a
 * bid as well, and a live bid binds until the venue releases it, whatever becomes of the proxy.
 */
export function ownBids(acts: readonly OwnBid[]): OwnBids {
  return acts.reduce(after, NONE);
}

function after(before: OwnBids, act: OwnBid): OwnBids {
  switch (act.action) {
    case 'proxy-placed':
    case 'proxy-raised':
    case 'proxy-cut':
      return act.cents === undefined ? before : withProxy(before, act, act.cents);
    case 'proxy-withdrawn': {
      const { proxy, withdrawn: _, rival: __, replaced: ___, ...left } = before;
      const cents = proxy?.cents ?? before.withdrawn?.cents ?? act.cents;
      return bound({ ...left, withdrawn: { by: act.by, at: act.at, cents, released: act.says === 'accepted' } });
    }
    case 'live-bid':
      return act.cents === undefined ? before : withLive(before, act, act.cents);
    case 'confirmation-seen':
      return confirmed(before, act);
    default:
      return before;
  }
}

function withProxy(before: OwnBids, act: OwnBid, cents: Cents): OwnBids {
  const { withdrawn: _, rival: __, replaced: ___, ...left } = before;
  const earlier = before.proxy;
  if (earlier !== undefined && earlier.at === act.at && earlier.cents !== cents && isOther(earlier.by, act.by)) {
    // Nobody can say which came last. The higher one is the larger risk, so it counts until somebody does.
    const mine = bidOf(before, act, cents, 'proxy');
    const [higher, lower] = earlier.cents > cents ? [earlier, mine] : [mine, earlier];
    return bound({ ...left, proxy: higher, rival: { cents: lower.cents, by: lower.by } });
  }
  const replaced =
    act.action === 'proxy-placed' && earlier !== undefined && earlier.cents > cents && isOther(earlier.by, act.by);
  return bound({
    ...left,
    proxy: bidOf(before, act, cents, 'proxy'),
    ...(replaced && { replaced: { cents: earlier.cents, by: earlier.by } }),
  });
}

/** Two people, as far as both are known. */
const isOther = (one: string, other: string): boolean => one !== '' && other !== '' && one !== other;

function withLive(before: OwnBids, act: OwnBid, cents: Cents): OwnBids {
  if (before.live !== undefined && before.live.cents > cents) return before;
  return bound({ ...before, live: bidOf(before, act, cents, 'live') });
}

function bidOf({ binding, proxy, live }: OwnBids, act: OwnBid, cents: Cents, how: StandingBid['how']): StandingBid {
  const same = how === 'proxy' ? proxy : live;
  // The same amount noted once more, by whoever, is the same bid.
  if (same?.cents === cents) return { ...same, ...(act.why !== undefined && { why: act.why }) };
  return {
    how,
    cents,
    at: act.at,
    by: act.by,
    why: act.why,
    maxBidThen: act.maxBidCents,
    closeThen: act.closeThen,
    first: binding === undefined,
  };
}

/** A confirmation is of the bid with its amount; without one, of the bid that binds. */
function confirmed(before: OwnBids, { says = 'accepted', at, cents, closeThen }: OwnBid): OwnBids {
  if (says === 'not-in') return withoutBid(before, cents ?? before.binding?.cents);
  if (says !== 'accepted') {
    const leads = says === 'high-bidder';
    const word: VenueWord = { says, at, cents };
    return bound({
      ...before,
      word,
      ...(leads && before.live && { live: { ...before.live, confirmedAt: at } }),
      ...(leads && before.proxy && { proxy: { ...before.proxy, confirmedAt: at } }),
    });
  }
  const { proxy, live, binding } = before;
  const which = cents ?? binding?.cents;
  const { replaced: _, ...left } = before;
  return bound({
    ...left,
    ...(proxy && proxy.cents === which && { proxy: { ...proxy, closeThen, confirmedAt: at } }),
    ...(live && live.cents === which && { live: { ...live, closeThen, confirmedAt: at } }),
  });
}

/** The venue never got it, or let it go: it binds nobody. */
function withoutBid({ proxy, live, ...left }: OwnBids, which: Cents | undefined): OwnBids {
  return bound({
    ...left,
    ...(proxy !== undefined && proxy.cents !== which && { proxy }),
    ...(live !== undefined && live.cents !== which && { live }),
  });
}

function bound({ binding: _, ...own }: OwnBids): OwnBids {
  const { proxy, live } = own;
  const binding = live !== undefined && (proxy === undefined || live.cents > proxy.cents) ? live : proxy;
  return { ...own, ...(binding !== undefined && { binding }) };
}
