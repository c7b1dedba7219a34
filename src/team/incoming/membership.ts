import type { DeviceId } from '../../journal/ids.ts';
import type { TeamId } from '../message/team-id.ts';

/** A key of the team, and how far it holds. */
export interface KeptKey {
  readonly key: CryptoKey;
  /** The last message on the server that may be sealed with it; null while it is the newest. */
  readonly until: number | null;
}

/** A device that is or was in the team. */
export interface Member {
  /** The key that it signs with, in hexadecimal; null when its browser can't sign. */
  readonly publicKey: string | null;
  /** The last message on the server that counts as its own; null while it is not put out. */
  readonly until: number | null;
}

/** Who is in a team, as this device knows it. */
export interface Membership {
  readonly team: TeamId;
  readonly keys: ReadonlyMap<number, KeptKey>;
  readonly members: ReadonlyMap<DeviceId, Member>;
}
