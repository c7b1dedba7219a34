import { type Outcome, ok, refuse } from '../../domain/outcome.ts';
import type { Hash } from '../../journal/ids.ts';
import { fileSubject } from '../message/subjects.ts';
import type { TeamId } from '../message/team-id.ts';
import type { TeamKey } from '../seal/seal.ts';
import type { Delivered, Wire, WireRefusal } from '../wire/wire.ts';
import { FILE_PIECE, type FilePiece, nameOfFile, openPiece, sealPiece } from './file-piece.ts';

/** The way to a team's files. */
export interface FilesWay {
  readonly wire: Wire;
  readonly team: TeamId;
  /** The newest first. */
  readonly keys: readonly TeamKey[];
}

/** A server that takes no more than this at once, in bytes, is of no use. */
const LEAST = 4_000;

/**
 * Sends a file in pieces, unless it is there; a cut leaves it for the next time to go on with. Of two devices that send the
 * same file at the same moment one is refused a place, and finds it there when it asks again.
 * @returns the last message of it
 */
export async function sendFile(
  { wire, team, keys }: FilesWay,
  { hash, blob }: { readonly hash: Hash; readonly blob: Blob },
): Promise<Outcome<Pick<Delivered, 'place' | 'data'>, WireRefusal>> {
  const [newest] = keys;
  if (newest === undefined) return refuse('not-allowed', 'This computer has no key of the team.');
  let open: { readonly piece: FilePiece; readonly place: number } | null = null;
  let place = 0;
  for (const key of keys) {
    const last = await wire.lastOn(fileSubject(team, await nameOfFile(hash, key)));
    if (!last.ok) return last;
    if (last.value === null) continue;
    const piece = await openPiece(last.value.data, keys, { team, hash });
    if (piece?.head.number === piece?.head.count && piece !== null) return ok(last.value);
    if (key !== newest) continue;
    place = last.value.place;
    open = piece === null ? null : { piece, place };
  }
  const subject = fileSubject(team, await nameOfFile(hash, newest));
  const bytes = new Uint8Array(await blob.arrayBuffer());
  for (let most = sizeOf(open?.piece) ?? FILE_PIECE; ; most = Math.floor(most / 2)) {
    const count = Math.max(1, Math.ceil(bytes.length / most));
    let data = '';
    let isTooLarge = false;
    for (let number = startOf(open?.piece, count); number <= count && !isTooLarge; number++) {
      const part = bytes.slice((number - 1) * most, number * most);
      const head = { team, hash, mediaType: blob.type.slice(0, 200), number, count };
      data = await sealPiece({ head, bytes: part }, newest);
      const published = await wire.publish({ subject, data, after: place });
      if (published.ok) place = published.value;
      else if (published.reason === 'too-large' && most / 2 >= LEAST) isTooLarge = true;
      else return published;
    }
    if (!isTooLarge) return ok({ place, data });
    open = null;
  }
}

/** Whoever began it cut it so; the last piece, which may be shorter, is never one that is gone on from. */
const sizeOf = (piece: FilePiece | undefined): number | undefined => piece?.bytes.length;

const startOf = (piece: FilePiece | undefined, count: number): number =>
  piece?.head.count === count ? piece.head.number + 1 : 1;
