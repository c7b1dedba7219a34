import { type Cents, positiveCentsSchema } from '../money/cents.ts';
import { formatMoney } from '../money/format-money.ts';
import { type Instant, instantSchema } from '../time/instant.ts';

/** What can be answered with one press, on a notice or in the Now view. */
export type Offer =
  | { readonly do: 'put-off'; readonly minutes: number }
  /** `from` is the close that was shown: pressed twice, time is added once. */
  | { readonly do: 'extended'; readonly minutes: number; readonly from: Instant }
  | { readonly do: 'hand-over'; readonly to: string }
  /** Who uses this computer has it, and says so to the team. */
  | { readonly do: 'have-it'; readonly as: string }
  | { readonly do: 'done' }
  | { readonly do: 'lost' }
  /** The user placed a proxy of this amount, or raised or cut his own to it. */
  | { readonly do: 'bid'; readonly verb: 'placed' | 'raised' | 'cut'; readonly cents: Cents };

/** What a button says. */
export function offerWords(offer: Offer): string {
  switch (offer.do) {
    case 'put-off':
      return `Remind me in ${offer.minutes} min`;
    case 'extended':
      return `Extended by ${offer.minutes} min`;
    case 'hand-over':
      return `Hand over to ${offer.to}`;
    case 'have-it':
      return 'I have it';
    case 'done':
      return 'No more reminders';
    case 'lost':
      return 'Lost';
    case 'bid':
      return `${VERBS[offer.verb]} ${formatMoney(offer.cents)}`;
  }
}

const VERBS = { placed: 'I placed', raised: 'I raised it to', cut: 'I cut it to' } as const;

/** An offer as one word without blanks, so that a notice's id can carry it through the death of the worker. */
export function offerCode(offer: Offer): string {
  switch (offer.do) {
    case 'put-off':
      return `${offer.do}:${offer.minutes}`;
    case 'extended':
      return `${offer.do}:${offer.minutes}:${offer.from}`;
    case 'hand-over':
      return `${offer.do}:${encodeURIComponent(offer.to)}`;
    case 'have-it':
      return `${offer.do}:${encodeURIComponent(offer.as)}`;
    case 'bid':
      return `${offer.do}:${offer.verb}:${offer.cents}`;
    case 'done':
    case 'lost':
      return offer.do;
  }
}

/** The offer a code stands for; null when it stands for none. */
export function readOfferCode(code: string): Offer | null {
  const [what = '', rest = '', more = ''] = code.split(':', 3);
  switch (what) {
    case 'put-off':
      return MINUTES.test(rest) ? { do: what, minutes: Number(rest) } : null;
    case 'extended': {
      const from = instantSchema.safeParse(Number(more));
      return MINUTES.test(rest) && from.success && more !== ''
        ? { do: what, minutes: Number(rest), from: from.data }
        : null;
    }
    case 'hand-over': {
      const to = decoded(rest);
      return to === null || to === '' ? null : { do: what, to };
    }
    case 'have-it': {
      const as = decoded(rest);
      return as === null || as === '' ? null : { do: what, as };
    }
    case 'bid': {
      const amount = positiveCentsSchema.safeParse(Number(more));
      return isVerb(rest) && more !== '' && amount.success ? { do: what, verb: rest, cents: amount.data } : null;
    }
    case 'done':
    case 'lost':
      return rest === '' ? { do: what } : null;
    default:
      return null;
  }
}

const isVerb = (text: string): text is keyof typeof VERBS => Object.hasOwn(VERBS, text);

const MINUTES = /^[1-9]\d{0,3}$/;

function decoded(text: string): string | null {
  try {
    return decodeURIComponent(text);
  } catch {
    // URIError is how JavaScript says that it was never encoded.
    return null;
  }
}
