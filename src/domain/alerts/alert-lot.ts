import type { Cents } from '../money/cents.ts';
import { isSameClose } from '../time/close-time.ts';
import type { Instant } from '../time/instant.ts';
import type { Zone } from '../time/zone.ts';
import type { Offer } from './offer.ts';

/** What the plan needs to know of a lot. */
export interface AlertLot {
  readonly id: string;
  /** While in doubt, the one of its readings that holds. */
  readonly close: Instant;
  /** What else the close can mean, until somebody chooses. */
  readonly otherCloses?: readonly Instant[] | undefined;
  /** The zone of the sale, where the close is in doubt. */
  readonly saleZone?: Zone | undefined;
  /** The car, as a person calls it. */
  readonly name: string;
  /** The price at which to stop, in words; or that there is none. */
  readonly stop: string;
  /** Where it is sold: the venue and the lot number, as far as known. */
  readonly where?: string | undefined;
  readonly bid: AlertBid;
  /** A result is known. */
  readonly ended: boolean;
  /** When it came in. A call that was due before that was never late. */
  readonly since: Instant;
  /** The user wants no more calls for this close. */
  readonly done?: boolean | undefined;
  /** Who watches it instead. */
  readonly handedTo?: string | undefined;
  /** He said himself that he has it. */
  readonly taken?: boolean | undefined;
  /** Who uses this computer has it, where several are in a team. */
  readonly mine?: boolean | undefined;
  readonly putOffUntil?: Instant | undefined;
  /** When it was put off. */
  readonly putOffAt?: Instant | undefined;
  /** Where the close stood before it moved last, and when it was moved. */
  readonly moved?: { readonly from: Instant; readonly at: Instant } | undefined;
  /** When the sale's last "time was extended" was told; the close is already the later one. */
  readonly extendedAt?: Instant | undefined;
  /** Minutes before the close, the earliest call first, where the user chose others for this lot than the rules'. */
  readonly ownLeads?: readonly number[] | undefined;
}

/** How our bid on a lot stands, as far as its alerts go. All but `placed` may take a moment to work out: ask where it matters. */
export interface AlertBid {
  /** A bid of ours is in. */
  readonly placed: boolean;
  /** Somebody should act before the close: no proxy yet, outbid with room left, over max, or a doubt about it. */
  readonly loud: boolean;
  /** A sentence: "No proxy is placed yet.", "Outbid at $10,600." */
  readonly words: string;
  /** The bid that is most likely made now; null where none would be right. */
  readonly offer: Offer | null;
  /** What came up about a bid that was in, or about the price, and is to be said at once. */
  readonly news: BidNews | null;
  /** The price that counts; absent while nobody has seen one. */
  readonly price?: PriceSeen | undefined;
  /** When it was made. */
  readonly at?: Instant | undefined;
  /** It stands below the max bid, so that it can be passed and raised. */
  readonly raisable?: boolean | undefined;
}

export interface PriceSeen {
  readonly cents: Cents;
  readonly seenAt: Instant;
  /** What is left from there to the max bid; absent when nothing is, or nobody knows. */
  readonly left?: Cents | undefined;
}

/** Said once, and not again until the bid is another one. */
export interface BidNews {
  /** Stable, and its own for this bid and what became of it. */
  readonly key: string;
  /** Milliseconds since 1970; as far as known. */
  readonly since: number;
  /** To stand after the name of the car: "outbid at $10,600". */
  readonly title: string;
  /** What can be done about it, in a sentence. */
  readonly body: string;
  /** Money is at risk until somebody acts: said aloud however far the close is. Else only where no call follows. */
  readonly urgent?: boolean;
  /** Nothing is to be done: never said aloud, and only near the close. */
  readonly calm?: boolean;
}

type Closes = Pick<AlertLot, 'close' | 'otherCloses'>;

/** Every moment at which it can close, the earliest first: one, unless its close is in doubt. */
export const readingsOf = ({ close, otherCloses = [] }: Closes): readonly Instant[] =>
  otherCloses.length === 0 ? [close] : [...new Set([close, ...otherCloses])].sort((a, b) => a - b);

/** Until then nobody can say that it has closed. */
export const closesBy = (lot: Closes): Instant => readingsOf(lot).at(-1) ?? lot.close;

/** The next moment at which it can close; the last one when all have passed. */
export const nextClose = (lot: Closes, now: number): Instant => readingsOf(lot).find((at) => at > now) ?? closesBy(lot);

/** The close by which its reminders are known: one that moved by seconds is not called again for them. */
export const calledAt = ({ close, moved }: Pick<AlertLot, 'close' | 'moved'>): Instant =>
  moved !== undefined && isSameClose(moved.from, close) ? moved.from : close;

/** Whether somebody still has to act before the close, whoever that is. */
export const wantsAct = (lot: AlertLot): boolean => !lot.ended && lot.done !== true && lot.bid.loud;

/** Whether somebody here still has to act before the close. */
export const needsBid = (lot: AlertLot): boolean => lot.handedTo === undefined && wantsAct(lot);
