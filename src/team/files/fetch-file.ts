import { type Outcome, ok, type Refusal, refuse } from '../../domain/outcome.ts';
import type { Hash } from '../../journal/ids.ts';
import { fileSubject } from '../message/subjects.ts';
import { type FilePiece, nameOfFile, openPiece } from './file-piece.ts';
import type { FilesWay } from './send-file.ts';

/** What is here of a file that is fetched: its first pieces, of how many, and the message that held the last of them. */
export interface PiecesHere {
  readonly here: number;
  readonly count: number;
  readonly place: number;
}

/** Where pieces wait until the file is whole: what came stays when the connection is cut. */
export interface PieceShelf {
  piecesOf(hash: string): Promise<PiecesHere>;
  /** Keeps the next piece; the first one takes the place of all that was there. */
  keepPiece(hash: string, here: PiecesHere, bytes: Uint8Array<ArrayBuffer>): Promise<Outcome<null>>;
  /** Puts them together and forgets them; false when they are not the file. */
  makeWhole(hash: string, mediaType: string): Promise<Outcome<boolean>>;
}

/** Messages asked for at once: 5 MB. */
const PAGE = 8;
const NONE: PiecesHere = { here: 0, count: 0, place: 0 };

type Found = 'whole' | 'damaged' | 'part' | 'nothing';
const NOT_THERE: Readonly<Record<Exclude<Found, 'whole'>, Refusal>> = {
  damaged: {
    reason: 'damaged',
    message: 'What the team’s server has of this file is not what the entry names. It was left out.',
  },
  part: {
    reason: 'not-there',
    message:
      'Only a part of this file is on the team’s server. The computer that has it sends the rest when it is next online.',
  },
  nothing: {
    reason: 'not-there',
    message: 'This file is not on the team’s server. The computer that has it sends it when it is next online.',
  },
};

interface Fetch extends FilesWay {
  readonly shelf: PieceShelf;
  readonly hash: Hash;
  /** How much of it is here, from 0 to 1. */
  readonly onShare?: (share: number) => void;
}

/**
 * Fetches a file that an entry names, in pieces, and checks it by its SHA-256 before it counts as here. It goes on where it
 * was cut off.
 */
export async function fetchFile(fetch: Fetch): Promise<Outcome<null, Refusal>> {
  let found: Exclude<Found, 'whole'> = 'nothing';
  for (const key of fetch.keys) {
    const subject = fileSubject(fetch.team, await nameOfFile(fetch.hash, key));
    const before = await fetch.shelf.piecesOf(fetch.hash);
    let outcome = await readFrom(fetch, subject, before);
    // The server was restored from an older copy, or the file was cut otherwise: then all of it is looked at again.
    if (outcome.ok && outcome.value !== 'whole' && before.here > 0) outcome = await readFrom(fetch, subject, NONE);
    if (!outcome.ok) return outcome;
    if (outcome.value === 'whole') return ok(null);
    if (outcome.value !== 'nothing') found = outcome.value;
  }
  const { reason, message } = NOT_THERE[found];
  return refuse(reason, message);
}

/** Reads what stands on a subject behind the pieces that are here. */
async function readFrom(fetch: Fetch, subject: string, before: PiecesHere): Promise<Outcome<Found, Refusal>> {
  const { wire, keys, team, hash } = fetch;
  let [here, found]: [PiecesHere, Found] = [before, 'nothing'];
  for (;;) {
    const page = await wire.from(here.place + 1, subject, PAGE);
    if (!page.ok) return page;
    for (const { place, data } of page.value) {
      const piece = await openPiece(data, keys, { team, hash });
      const isNext = piece !== null && isNextOf(here, piece);
      here = { ...here, place };
      if (piece === null) found = 'damaged';
      if (piece === null || !isNext) continue;
      here = { here: piece.head.number, count: piece.head.count, place };
      const taken = await take(fetch, piece, here);
      if (!taken.ok || taken.value === 'whole') return taken;
      if (taken.value === 'damaged') here = { ...NONE, place };
      found = taken.value;
    }
    if (page.value.length < PAGE) return ok(found);
  }
}

/** The one that follows what is here, or one to begin anew with. */
const isNextOf = ({ here, count }: PiecesHere, { head }: FilePiece): boolean =>
  head.number === 1 ? here === 0 || head.count !== count : head.number === here + 1 && head.count === count;

async function take({ shelf, hash, onShare }: Fetch, piece: FilePiece, here: PiecesHere): Promise<Outcome<Found>> {
  const kept = await shelf.keepPiece(hash, here, piece.bytes);
  if (!kept.ok) return kept;
  onShare?.(here.here / here.count);
  if (here.here < here.count) return ok('part');
  const whole = await shelf.makeWhole(hash, piece.head.mediaType);
  return whole.ok ? ok(whole.value ? 'whole' : 'damaged') : whole;
}
