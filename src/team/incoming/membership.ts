import type { DeviceId } from '../../journal/ids.ts';
import type { TeamId } from '../message/team-id.ts';

/** A device that is or was in the team. */
export interface Member {
  /** The key that it signs the end of its chain with, in hexadecimal; null when its browser can't. */
  readonly publicKey: string | null;
  /** The key that the server knows it by, with which it signs where its browser can't. */
  readonly userKey: string;
  /** The number of the last entry of its chain that counts; null while it is not put out. */
  readonly ends: number | null;
}

/** Who is in a team, as this device knows it. */
export interface Membership {
  readonly team: TeamId;
  /** All keys that the team had, by their numbers: what was sealed with the first is still to be read. */
  readonly keys: ReadonlyMap<number, CryptoKey>;
  readonly members: ReadonlyMap<DeviceId, Member>;
}
