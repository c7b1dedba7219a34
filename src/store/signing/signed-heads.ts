import * as z from 'zod/mini';
import { checkSignature, type DeviceKey, type SignedHead, signedHeadSchema } from '../../journal/signed-head.ts';
import { headsOf } from '../connection/about.ts';
import type { ReadTransaction, WriteTransaction } from '../connection/schema.ts';
import { StoreUnavailable } from '../connection/storage-failure.ts';
import { readHead } from '../write/head.ts';
import type { Session } from '../write/session.ts';
import { signHead } from './own-key.ts';

const keptSchema = z.array(signedHeadSchema);
/** How often a head is signed anew because another tab wrote in between. */
const TRIES = 5;

/** The ends of all chains at one moment, signed as far as signatures are known. */
export type HeadsAtOnce = (tx: ReadTransaction) => Promise<readonly SignedHead[]>;

/**
 * Runs a reading that hands out the ends of the chains, with this browser's own end signed. A signature can't be made
 * inside a transaction, so it is made before, and again where the chain has grown since.
 */
export async function readWithSignedHeads<Value>(
  session: Session,
  read: (tx: ReadTransaction, heads: HeadsAtOnce) => Promise<Value>,
): Promise<Value> {
  for (let tries = 1; ; tries++) {
    const own = await signOwnHead(session);
    let grown = false;
    const value = await session.connection.read((tx) =>
      read(tx, async () => {
        const heads = await signedHeadsOf(tx);
        const { device } = await readHead(tx);
        grown = own && heads.find((head) => head.device === device)?.signed === undefined;
        return heads;
      }),
    );
    if (!grown || tries === TRIES) return value;
  }
}

/** False when this browser can't sign, has written nothing, or has no room to keep it: a backup goes out all the same. */
async function signOwnHead(session: Session): Promise<boolean> {
  try {
    return await signEnd(session);
  } catch (error) {
    if (error instanceof StoreUnavailable) return false;
    throw error;
  }
}

async function signEnd(session: Session): Promise<boolean> {
  const found = await session.connection.read(async (tx) => {
    const { device, sequence, hash } = await readHead(tx);
    const head = (await signedHeadsOf(tx)).find((one) => one.device === device);
    return { head, isEnd: head?.sequence === sequence && head.hash === hash };
  });
  if (found.head === undefined || !found.isEnd) return false;
  if (found.head.signed !== undefined) return true;
  const { signed: _, ...head } = found.head;
  const signed = await signHead(session, head);
  if (signed === null) return false;
  await session.connection.write((tx) => keepSignedHeads(tx, [{ ...head, signed }]));
  return true;
}

async function signedHeadsOf(tx: ReadTransaction): Promise<SignedHead[]> {
  const kept = new Map((await keptHeads(tx)).map((head) => [head.device, head]));
  return (await headsOf(tx)).map((head) => {
    const known = kept.get(head.device);
    const fits = known?.sequence === head.sequence && known.hash === head.hash && known.signed !== undefined;
    return fits ? { ...head, signed: known.signed } : head;
  });
}

async function keptHeads(tx: ReadTransaction): Promise<readonly SignedHead[]> {
  const kept = keptSchema.safeParse(await tx.objectStore('meta').get('signed-heads'));
  return kept.success ? kept.data : [];
}

/** Remembers signed ends of chains, the latest of each device, and by them which key is whose. A key once known stays. */
export async function keepSignedHeads(tx: WriteTransaction, heads: readonly SignedHead[]): Promise<void> {
  const kept = new Map((await keptHeads(tx)).map((head) => [head.device, head]));
  for (const head of heads) {
    const known = kept.get(head.device);
    const isOther = known?.signed !== undefined && known.signed.publicKey !== head.signed?.publicKey;
    if (head.signed !== undefined && !isOther && head.sequence >= (known?.sequence ?? 0)) kept.set(head.device, head);
  }
  await tx.objectStore('meta').put([...kept.values()], 'signed-heads');
}

/** Those whose signature fits: only these are remembered out of a file. */
export async function wellSigned(heads: readonly SignedHead[]): Promise<readonly SignedHead[]> {
  const fits = await Promise.all(
    heads.map(async ({ signed, ...head }) => signed !== undefined && (await checkSignature(head, signed)) === 'good'),
  );
  return heads.filter((_, i) => fits[i]);
}

/** The keys that devices are known to sign with, this browser's own among them. */
export function knownKeys(session: Session): Promise<readonly DeviceKey[]> {
  return session.connection.read(async (tx) =>
    (await keptHeads(tx)).flatMap(({ device, signed }) =>
      signed === undefined ? [] : [{ device, publicKey: signed.publicKey }],
    ),
  );
}
