import type { Instant } from '../../domain/time/instant.ts';
import type { DeviceId } from '../../journal/ids.ts';

/**
 * What this browser knows of the team that it is in. It lies in this browser alone: in no backup, in no message, and where no
 * web page can reach.
 */
export interface KeptTeam {
  readonly shown: ShownTeam;
  /** Keys and what they belong to. Only the program that talks to the team's server knows what is in it. */
  readonly secret: unknown;
}

/** What the screens may know of it. */
export interface ShownTeam {
  /** What the dealership calls itself. */
  readonly name: string;
  /** Of the server, or of three that stand in for each other. */
  readonly addresses: readonly string[];
  /**
   * - `starting`: the server has not been told of the team yet;
   * - `asking`: nobody has let this computer in yet;
   * - `in`;
   * - `out`: it was put out, or let in no more.
   */
  readonly state: 'starting' | 'asking' | 'in' | 'out';
  /** As which this computer is in it. */
  readonly role: string;
  readonly people: readonly TeamPerson[];
  /** Invitations that nobody has used yet; only on an owner's computer. */
  readonly invitations: readonly TeamInvitation[];
}

/** A computer that is or was in the team, and whose it is. */
export interface TeamPerson {
  readonly device: DeviceId;
  readonly name: string;
  readonly role: string;
  readonly isOut: boolean;
}

export interface TeamInvitation {
  readonly id: string;
  readonly name: string;
  readonly role: string;
  readonly until: Instant;
}

/** How far sending and fetching came. */
export interface TeamProgress {
  /** The last message with entries that was looked at, and its hash; 0 and '' for none. */
  readonly place: number;
  readonly hash: string;
  /** Devices that something is missing of, each with the first message that waits for it. */
  readonly waiting: readonly (readonly [DeviceId, number])[];
  /** The server's last message when everything was last fetched. */
  readonly seen: number;
  /** The server's last message as far as is known: more than `place` while something is fetched. */
  readonly last: number;
  /** The number of the last entry of this browser that the server has. */
  readonly sent: number;
  /** When everything was last sent and fetched; null when it never was. */
  readonly inStepAt: Instant | null;
  /** Why sending or fetching stopped the last time; null when it did not. */
  readonly stopped: { readonly reason: string; readonly message: string } | null;
  /** A sentence for each message that was left out, the latest last. */
  readonly told: readonly string[];
  /** How far this computer's clock is ahead of the server's, in milliseconds; null while nobody can say. */
  readonly ahead: number | null;
}

export const NO_PROGRESS: TeamProgress = {
  place: 0,
  hash: '',
  waiting: [],
  seen: 0,
  last: 0,
  sent: 0,
  inStepAt: null,
  stopped: null,
  told: [],
  ahead: null,
};
