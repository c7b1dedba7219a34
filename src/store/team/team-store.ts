import { type Outcome, ok, type Refusal } from '../../domain/outcome.ts';
import type { Instant } from '../../domain/time/instant.ts';
import type { ChainHead } from '../../journal/chain-head.ts';
import type { DeviceId } from '../../journal/ids.ts';
import type { Envelope } from '../../journal/read-entry.ts';
import type { SignedHead } from '../../journal/signed-head.ts';
import type { ChainEnd } from '../../journal/verify-chain.ts';
import { headsOf, setAuthor } from '../connection/about.ts';
import type { KeptTeam, TeamProgress } from '../connection/kept-team.ts';
import { openSession } from '../open-session.ts';
import { ownPublicKey, signHead } from '../signing/own-key.ts';
import type { StoreOptions } from '../store.ts';
import { lastOf, readHead } from '../write/head.ts';
import type { StoreChange } from '../write/touched.ts';
import { type Arrived, type TakenIn, takeIn } from './take-in.ts';
import { type TeamFiles, teamFiles } from './team-files.ts';
import { keepTeam, keptTeam, noteProgress, teamProgress } from './team-state.ts';
import { UndosSeen } from './undos-seen.ts';

/** What a team's sending and fetching need of the journal: nothing here waits for a network. */
export interface TeamStore extends TeamFiles {
  /** The device that this browser writes as. */
  device(): Promise<DeviceId>;
  /** Where the chain of a device ends here; null when nothing of it is here. */
  endOf(device: DeviceId): Promise<ChainEnd | null>;
  entryAt(device: DeviceId, sequence: number): Promise<Envelope | null>;
  /** Entries that this browser wrote behind a number, in their order, at most so many. */
  ownAfter(sequence: number, most: number): Promise<readonly Envelope[]>;
  /** An entry of this browser's own chain as an end of it, signed where the browser can sign. */
  signedEnd(entry: Envelope): Promise<SignedHead>;
  /** The key that this browser signs with, in hexadecimal; null where it can't sign. */
  publicKey(): Promise<string | null>;
  /** The ends of the others' chains as they are here now; null when nothing of them is. */
  othersEnds(): Promise<{ readonly at: Instant; readonly heads: ChainHead[] } | null>;
  takeIn(arrived: readonly Arrived[]): Promise<Outcome<TakenIn>>;
  /** The number of the last entry that this browser wrote; 0 for none. */
  ownEnd(): Promise<number>;
  /** The team that this browser is in, with its keys; null for none. */
  team(): Promise<KeptTeam | null>;
  /** Keeps the team; null forgets it. */
  keepTeam(team: KeptTeam | null): Promise<Outcome<null>>;
  /** In whose name this browser writes from now on. */
  setAuthor(name: string): Promise<Outcome<null>>;
  progress(): Promise<TeamProgress>;
  noteProgress(progress: TeamProgress): Promise<Outcome<null>>;
  /** Calls back after changes by anyone, here or in another tab. Returns how to stop. */
  subscribe(listener: (change: StoreChange) => void): () => void;
  close(): void;
}

/** Devices of which a message says how far they were seen: far more than a store has. */
const MOST_SEEN = 100;

/** Opens the same journal as `openStore`, for whoever sends and fetches; the background is loaded without it. */
export async function openTeamStore(options: StoreOptions): Promise<Outcome<TeamStore, Refusal>> {
  const opened = await openSession(options);
  if (!opened.ok) return opened;
  const { session } = opened.value;
  const undos = new UndosSeen();
  const { read } = session.connection;
  return ok({
    ...teamFiles(session),
    device: () => read(async (tx) => (await readHead(tx)).device),
    endOf: (device) => read((tx) => lastOf(tx, device)),
    entryAt: (device, sequence) =>
      read(async (tx) => (await tx.objectStore('entries').index('sequence').get([device, sequence])) ?? null),
    ownAfter: (sequence, most) =>
      read(async (tx) => {
        const { device } = await readHead(tx);
        const behind = IDBKeyRange.bound([device, sequence], [device, Infinity], true);
        return tx.objectStore('entries').index('sequence').getAll(behind, most);
      }),
    async signedEnd({ device, sequence, hash }) {
      const signed = await signHead(session, { device, sequence, hash });
      return { device, sequence, hash, ...(signed !== null && { signed }) };
    },
    publicKey: () => ownPublicKey(session),
    othersEnds: () =>
      read(async (tx) => {
        const { device } = await readHead(tx);
        const heads = (await headsOf(tx)).filter((head) => head.device !== device).slice(0, MOST_SEEN);
        return heads.length === 0 ? null : { at: session.now(), heads };
      }),
    takeIn: (arrived) => takeIn(session, arrived, undos),
    ownEnd: () => read(async (tx) => (await readHead(tx)).sequence),
    team: () => read(keptTeam),
    keepTeam: (team) => keepTeam(session, team),
    setAuthor: (name) => setAuthor(session, name),
    progress: () => read(teamProgress),
    noteProgress: (progress) => noteProgress(session, progress),
    subscribe: (listener) => session.feed.subscribe(listener),
    close() {
      session.feed.close();
      session.connection.close();
    },
  });
}
