import type { Outcome } from '../../domain/outcome.ts';
import type { Instant } from '../../domain/time/instant.ts';
import type { DeviceId } from '../../journal/ids.ts';
import { headsOf } from '../connection/about.ts';
import { type KeptTeam, NO_PROGRESS, type ShownTeam, type TeamProgress } from '../connection/kept-team.ts';
import type { ReadTransaction } from '../connection/schema.ts';
import { lastOf, readHead } from '../write/head.ts';
import type { Session } from '../write/session.ts';
import { tryWrite } from '../write/try-write.ts';

/** How this browser stands to its team, for whoever shows it: nothing of it is secret. */
export interface TeamStanding {
  readonly shown: ShownTeam;
  readonly device: DeviceId;
  readonly progress: TeamProgress;
  readonly inStepAt: Instant | null;
  /** Entries of this browser that the server does not have. */
  readonly notSent: number;
  /** When the first of them was written; null when there is none. */
  readonly notSentSince: Instant | null;
  /** A sentence; null when nothing stopped. */
  readonly stopped: string | null;
}

/** Someone's device, as its entries here tell. */
export interface TeamDevice {
  readonly device: DeviceId;
  readonly own: boolean;
  /** In whose name it wrote last. */
  readonly author: string;
  /** When it wrote last, by its own clock. */
  readonly wroteAt: Instant;
  readonly entries: number;
}

/** Null while this browser is in no team. */
export function teamStanding(session: Session): Promise<TeamStanding | null> {
  return session.connection.read(async (tx) => {
    const kept = await keptTeam(tx);
    if (kept === null) return null;
    const progress = await teamProgress(tx);
    const { device, sequence } = await readHead(tx);
    const notSent = Math.max(0, sequence - progress.sent);
    const first = notSent === 0 ? undefined : await entryAfter(tx, device, progress.sent);
    return {
      shown: kept.shown,
      device,
      progress,
      inStepAt: progress.inStepAt,
      notSent,
      notSentSince: first?.at ?? null,
      stopped: progress.stopped?.message ?? null,
    };
  });
}

async function entryAfter(tx: ReadTransaction, device: DeviceId, sequence: number) {
  return tx
    .objectStore('entries')
    .index('sequence')
    .get(IDBKeyRange.bound([device, sequence], [device, Infinity], true));
}

/** Every device that wrote in the journal that is here. */
export function teamDevices(session: Session): Promise<readonly TeamDevice[]> {
  return session.connection.read(async (tx) => {
    const own = (await readHead(tx)).device;
    const devices: TeamDevice[] = [];
    for (const { device, sequence } of await headsOf(tx)) {
      const last = await lastOf(tx, device);
      if (last === null) continue;
      devices.push({ device, own: device === own, author: last.author, wroteAt: last.at, entries: sequence });
    }
    return devices;
  });
}

export async function keptTeam(tx: ReadTransaction): Promise<KeptTeam | null> {
  // Nothing else is ever written under this key, and a CryptoKey has no schema.
  return ((await tx.objectStore('meta').get('team')) as KeptTeam | undefined) ?? null;
}

export async function teamProgress(tx: ReadTransaction): Promise<TeamProgress> {
  return ((await tx.objectStore('meta').get('team-progress')) as TeamProgress | undefined) ?? NO_PROGRESS;
}

/** Keeps the team, or forgets it and how far it was read: the entries stay. */
export async function keepTeam(session: Session, team: KeptTeam | null): Promise<Outcome<null>> {
  const kept = await tryWrite(session, async (tx) => {
    const meta = tx.objectStore('meta');
    if (team !== null) await meta.put(team, 'team');
    else for (const key of ['team', 'team-progress'] as const) await meta.delete(key);
    return null;
  });
  if (kept.ok) announce(session, true);
  return kept;
}

/** Notes how far it came. What is said of it is renewed in every tab. */
export async function noteProgress(session: Session, progress: TeamProgress): Promise<Outcome<null>> {
  const noted = await tryWrite(session, async (tx) => {
    // A team that was left meanwhile has no progress.
    if ((await keptTeam(tx)) !== null) await tx.objectStore('meta').put(progress, 'team-progress');
    return null;
  });
  if (noted.ok) announce(session);
  return noted;
}

const announce = (session: Session, keptTeam = false): void =>
  session.feed.announce({ lots: [], setup: false, alerts: false, team: true, ...(keptTeam && { keptTeam }) });
