import { type Outcome, ok, refuse } from '../../domain/outcome.ts';
import { type ChainHead, chainHeadSchema, writeHead } from '../../journal/chain-head.ts';
import { hashOfText } from '../../journal/entry-hash.ts';
import { type Stamp, stampsSchema } from '../../journal/stamp/stamp-format.ts';
import type { ReadTransaction, WriteTransaction } from '../connection/schema.ts';
import { eachEntry } from '../journal/each-entry.ts';
import type { Session } from '../write/session.ts';
import { tryWrite } from '../write/try-write.ts';

/** The time stamps that this store knows, by whichever device. */
export async function stampsIn(tx: ReadTransaction): Promise<readonly Stamp[]> {
  const kept = stampsSchema.safeParse(await tx.objectStore('meta').get('stamps'));
  return kept.success ? kept.data : [];
}

export const knownStamps = (session: Session): Promise<readonly Stamp[]> => session.connection.read(stampsIn);

/** Remembers stamps, each once, and of entries that are here: those of entries that a restore took away are forgotten. */
export async function keepStamps(tx: WriteTransaction, stamps: readonly Stamp[]): Promise<void> {
  const known = new Map([...(await stampsIn(tx)), ...stamps].map((stamp) => [keyOf(stamp), stamp]));
  if (known.size === 0) return;
  const kept: Stamp[] = [];
  for (const stamp of known.values()) if (await isHere(tx, stamp)) kept.push(stamp);
  await tx.objectStore('meta').put(kept.slice(0, MOST), 'stamps');
}

/** Keeps a stamp that was checked. Refused when the entry that it is of is not here, or there are too many already. */
export async function addStamp(session: Session, stamp: Stamp): Promise<Outcome<null>> {
  const here = await session.connection.read(
    async (tx) => (await isHere(tx, stamp)) && (await stampsIn(tx)).length < MOST,
  );
  if (!here)
    return refuse('no-such-entry', 'This time stamp is of an entry that is not in the journal of this browser.');
  const kept = await tryWrite(session, async (tx) => {
    await keepStamps(tx, [stamp]);
    return null;
  });
  return kept.ok ? ok(null) : kept;
}

const MOST = 1000;
const keyOf = ({ device, sequence, token }: Stamp): string => `${device} ${sequence} ${token}`;

async function isHere(tx: ReadTransaction, { device, sequence, hash }: Stamp): Promise<boolean> {
  return (await tx.objectStore('entries').index('sequence').get([device, sequence]))?.hash === hash;
}

/**
 * The entry whose noted line has this SHA-256. Every one is tried: an answer may come days after its request.
 * @param imprint in lower-case hex
 */
export const headWithImprint = (session: Session, imprint: string): Promise<ChainHead | null> =>
  session.connection.read(async (tx) => {
    const found: ChainHead[] = [];
    await eachEntry(tx, ({ device, sequence, hash }) => {
      const head = chainHeadSchema.safeParse({ device, sequence, hash });
      if (head.success && hashOfText(writeHead(head.data)) === imprint) found.push(head.data);
    });
    return found[0] ?? null;
  });
