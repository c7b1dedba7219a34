import * as z from 'zod/mini';
import { hashSchema } from '../../journal/ids.ts';
import { hexOf } from '../keys/hex.ts';
import { teamIdSchema } from '../message/team-id.ts';
import { sealBytes, type TeamKey, unsealBytes } from '../seal/seal.ts';

/** Bytes of a piece: sealed, it is a third more, and a server takes 1 MB as it is delivered. */
export const FILE_PIECE = 500_000;

/** What stands before the bytes of a piece, in one line. */
const headSchema = z.strictObject({
  format: z.literal('headroom-team-file'),
  version: z.literal(1),
  team: teamIdSchema,
  /** The SHA-256 of the whole file, by which the journal names it. */
  hash: hashSchema,
  mediaType: z.string().check(z.maxLength(200)),
  /** From 1. */
  number: z.int().check(z.gte(1)),
  count: z.int().check(z.gte(1)),
});
type FileHead = z.infer<typeof headSchema>;

export interface FilePiece {
  readonly head: Omit<FileHead, 'format' | 'version'>;
  readonly bytes: Uint8Array<ArrayBuffer>;
}

export function sealPiece({ head, bytes }: FilePiece, key: TeamKey): Promise<string> {
  const line = new TextEncoder().encode(
    `${JSON.stringify({ format: 'headroom-team-file', version: 1, ...head } satisfies FileHead)}\n`,
  );
  const all = new Uint8Array(line.length + bytes.length);
  all.set(line);
  all.set(bytes, line.length);
  return sealBytes(all, key);
}

/** Opens a piece; null when it is none of this file, of whatever kind. */
export async function openPiece(
  sealed: string,
  keys: readonly TeamKey[],
  { team, hash }: Pick<FileHead, 'team' | 'hash'>,
): Promise<FilePiece | null> {
  const opened = await unsealBytes(sealed, (number) => keys.find((one) => one.number === number)?.key);
  if (!opened.ok) return null;
  const { bytes } = opened.value;
  const end = bytes.indexOf(10);
  try {
    const head = headSchema.safeParse(JSON.parse(new TextDecoder().decode(bytes.subarray(0, end))));
    if (!head.success || head.data.team !== team || head.data.hash !== hash || head.data.number > head.data.count)
      return null;
    return { head: head.data, bytes: new Uint8Array(bytes.subarray(end + 1)) };
  } catch {
    return null;
  }
}

/** Under which name a file stands on the server: whoever has no key can't find out by trying which file it is. */
export async function nameOfFile(hash: string, { naming }: TeamKey): Promise<string> {
  return hexOf(new Uint8Array(await crypto.subtle.sign('HMAC', naming, new TextEncoder().encode(hash))));
}
