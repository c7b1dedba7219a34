import type { Instant } from '../time/instant.ts';

/** What the plan needs to know of a lot. */
export interface AlertLot {
  readonly id: string;
  readonly close: Instant;
  /** The car, as a person calls it. */
  readonly name: string;
  /** The price at which to stop, in words; or that there is none. */
  readonly stop: string;
  readonly placed: boolean;
  /** A result is known. */
  readonly ended: boolean;
  /** When it came in. A call that was due before that was never late. */
  readonly since: Instant;
  /** The user wants no more calls for this close. */
  readonly done?: boolean | undefined;
  /** Who watches it instead. */
  readonly handedTo?: string | undefined;
  readonly putOffUntil?: Instant | undefined;
  /** When the sale's last "time was extended" was told; the close is already the later one. */
  readonly extendedAt?: Instant | undefined;
  /** Minutes before the close, the earliest call first, where the user chose others for this lot than the rules'. */
  readonly ownLeads?: readonly number[] | undefined;
}

/** Whether somebody here still has to act before the close. */
export const needsBid = (lot: AlertLot): boolean =>
  !lot.placed && !lot.ended && lot.done !== true && lot.handedTo === undefined;
