import type { Instant } from '../../domain/time/instant.ts';
import type { DeviceId } from '../../journal/ids.ts';
import type { Credentials } from '../access/credentials.ts';
import type { ServerKeys } from '../access/server-keys.ts';
import type { TeamId } from '../message/team-id.ts';
import type { TeamKey } from '../seal/seal.ts';
import type { Role } from './roster-device.ts';

/**
 * What a computer keeps of its team, as it lies in IndexedDB (structured clone). It is in no backup and in no message; a web
 * page never sees it.
 */
export interface TeamState {
  readonly team: TeamId;
  readonly addresses: readonly string[];
  readonly device: DeviceId;
  readonly credentials: Credentials;
  readonly box: CryptoKeyPair;
  /** The newest first. */
  readonly keys: readonly TeamKey[];
  /** The hash of the roster's first message, by which nobody can put another team in its place. */
  readonly root: string;
  /** The messages of the roster, in their order: a server that lost them gets them again from an owner. */
  readonly roster: readonly string[];
  /** What only an owner's computer has; null on the others. */
  readonly owner: OwnerState | null;
}

export interface OwnerState {
  readonly server: ServerKeys;
  readonly invitations: readonly OpenInvitation[];
}

/** An invitation that nobody has used yet. */
export interface OpenInvitation {
  readonly id: string;
  readonly name: string;
  readonly role: Role;
  readonly until: Instant;
  /** Seals what the invited one says of itself. */
  readonly secret: CryptoKey;
}

/** Who joins or starts, as the team will know it. */
export interface Self {
  readonly device: DeviceId;
  readonly name: string;
  /** The key that it signs the end of its chain with; null where its browser can't. */
  readonly signKey: string | null;
}
