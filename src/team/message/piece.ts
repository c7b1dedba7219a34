import * as z from 'zod/mini';
import { type ChainHead, chainHeadSchema } from '../../journal/chain-head.ts';
import { hashAside } from '../../journal/entry-hash.ts';
import { hashSchema } from '../../journal/ids.ts';
import { valueOfLine } from '../../journal/strict-json.ts';
import { type TeamId, teamIdSchema } from './team-id.ts';

const FORMAT = 'headroom-team-piece';
/** By which a piece is told from a whole message before anything of it is read. */
const START = `{"format":"${FORMAT}",`;
/** Pieces of one message at most: with the usual size 200 MB, far more than any entry. */
export const MOST_PIECES = 400;

/**
 * A piece of the text of a message that is larger than the server takes at once. It is sealed and sent as a message is, and
 * names the end of the chain that the whole brings, so that nobody waits for the rest of what is here already.
 */
const pieceSchema = z.strictObject({
  format: z.literal(FORMAT),
  version: z.literal(1),
  team: teamIdSchema,
  /** The last entry of the whole. */
  head: chainHeadSchema,
  /** The number of the entry before its first; 0 for none. */
  after: z.int().check(z.gte(0)),
  /** The SHA-256 of the whole text. */
  of: hashSchema,
  /** From 1. */
  number: z.int().check(z.gte(1), z.lte(MOST_PIECES)),
  count: z.int().check(z.gte(2), z.lte(MOST_PIECES)),
  text: z.string().check(z.minLength(1)),
});
export type Piece = z.infer<typeof pieceSchema>;

/** Reads a piece; null when the text is none, or not one as it is written here. */
export function readPiece(text: string): Piece | null {
  const line = text.startsWith(START) ? valueOfLine(text) : null;
  const piece = line?.ok ? pieceSchema.safeParse(line.value) : null;
  return piece?.success === true && piece.data.number <= piece.data.count ? piece.data : null;
}

export interface Whole {
  readonly team: TeamId;
  readonly head: ChainHead;
  readonly after: number;
  readonly text: string;
}

/**
 * The text of a message in pieces, of so many bytes at most; null when it would be more pieces than anybody takes. One that
 * fits is a piece of none: it is sent as it is.
 */
export async function piecesOf({ team, head, after, text }: Whole, most: number): Promise<readonly Piece[] | null> {
  const texts = cut(text, most);
  if (texts.length > MOST_PIECES) return null;
  const of = await hashAside(text);
  const { device, sequence, hash } = head;
  return texts.map((part, i) => ({
    format: FORMAT,
    version: 1,
    team,
    head: { device, sequence, hash },
    after,
    of,
    number: i + 1,
    count: texts.length,
    text: part,
  }));
}

export const bytesOf = (text: string): number => new TextEncoder().encode(text).length;

/** A letter takes three bytes at most in UTF-8 for each of its parts here; none is cut in its middle. */
function cut(text: string, most: number): string[] {
  const [texts, step]: [string[], number] = [[], Math.max(1, Math.floor(most / 3))];
  for (let from = 0; from < text.length; ) {
    let to = Math.min(text.length, from + step);
    if (to < text.length && isLowHalf(text.charCodeAt(to))) to += 1;
    texts.push(text.slice(from, to));
    from = to;
  }
  return texts;
}

const isLowHalf = (code: number): boolean => code >= 0xdc00 && code <= 0xdfff;
