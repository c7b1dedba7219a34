import type { Outcome } from '../../domain/outcome.ts';
import type { Instant } from '../../domain/time/instant.ts';

/** A message as the server hands it out. */
export interface Delivered {
  readonly subject: string;
  /** Its place among all messages of the team, from 1, by the server. */
  readonly place: number;
  /** When the server stored it, by its own clock. */
  readonly at: Instant;
  readonly data: string;
}

export interface ToPublish {
  readonly subject: string;
  readonly data: string;
  /** The place of the last message on this subject; 0 when there is none. The server refuses it where that is not so. */
  readonly after: number;
}

/**
 * - `no-connection`: nobody answered in time; whether it was stored is not known;
 * - `not-last`: another message is the last on this subject;
 * - `not-allowed`: this device's key may not do that, or is not let in any more;
 * - `too-large`: the server takes no message of that size;
 * - `unprotected`: the team's stream is there, but messages in it can be deleted;
 * - `full`: the server has no room left, or refused for a reason of its own.
 */
export interface WireRefusal {
  readonly reason: 'no-connection' | 'not-last' | 'not-allowed' | 'too-large' | 'unprotected' | 'full';
  readonly message: string;
}

/** All that a team's devices ask of the server between them. Each call answers within some seconds, or is refused. */
export interface Wire {
  /** Stores a message; answers its place once the server (or most of three) has it on its disk. */
  publish(message: ToPublish): Promise<Outcome<number, WireRefusal>>;
  /** The place of the team's last message; 0 when there is none. */
  last(): Promise<Outcome<number, WireRefusal>>;
  /** The last message on a subject; null when there is none. */
  lastOn(subject: string): Promise<Outcome<Delivered | null, WireRefusal>>;
  /** The message at a place; null when there is none. */
  at(place: number): Promise<Outcome<Delivered | null, WireRefusal>>;
  /** Messages on a subject (`*` for any device) from a place on, in their order, at most so many. */
  from(place: number, subject: string, most: number): Promise<Outcome<readonly Delivered[], WireRefusal>>;
  /**
   * Makes the team's stream where there is none (an owner may), and finds out whether nothing in it can be deleted.
   * @param servers that keep each message: 1 or 3
   */
  makeStream(servers: number): Promise<Outcome<null, WireRefusal>>;
  close(): Promise<void>;
}

/** The way by which an owner's computer tells the server whose keys hold no more. */
export interface ClaimsWire {
  /** Keys that the server lets in no more (`U…`), by its word for an account. */
  revoked(account: string): Promise<Outcome<readonly string[], WireRefusal>>;
  /** A new word for an account, signed by the operator. Whoever is out by it is disconnected at once. */
  tell(word: string): Promise<Outcome<null, WireRefusal>>;
  close(): Promise<void>;
}
