import type { Refusal } from '../../domain/outcome.ts';
import type { ChainHead } from '../../journal/chain-head.ts';
import { bytesOf, type Piece, piecesOf } from '../message/piece.ts';
import type { TeamId } from '../message/team-id.ts';
import { seal, type TeamKey } from '../seal/seal.ts';
import type { Wire } from '../wire/wire.ts';
import type { Sent } from './server-end.ts';

interface Way {
  readonly wire: Wire;
  readonly key: TeamKey;
  readonly subject: string;
  /** Bytes of a message before it is sealed. */
  readonly most: number;
}

interface Message {
  readonly team: TeamId;
  readonly head: ChainHead;
  readonly text: string;
  /** The same without what is another at each try: only so a message in pieces can be gone on with. */
  readonly bare: string;
}

interface Published {
  readonly sent: Sent;
  /** What the server was found to take. */
  readonly most: number;
  readonly stopped: Refusal | null;
}

/** A server that takes no more than this at once, in bytes, is of no use. */
const LEAST = 4_000;

/**
 * Publishes a message; one that is larger than the server takes goes in pieces, which go on where a cut left them. A server
 * that takes less than is usual is met with smaller ones.
 */
export async function publishWhole(way: Way, { team, head, text, bare }: Message, before: Sent): Promise<Published> {
  let sent = before;
  for (let { most } = way; ; most = Math.floor(most / 2)) {
    const fits = [text, bare].find((one) => bytesOf(one) <= most);
    const pieces = fits === undefined ? await piecesOf({ team, head, after: before.sequence, text: bare }, most) : [];
    if (pieces === null) return { sent, most, stopped: TOO_LARGE };
    const texts = fits === undefined ? pieces.map((one) => JSON.stringify(one)) : [fits];
    let isTooLarge = false;
    for (let i = alreadyThere(sent.piece, pieces); i < texts.length && !isTooLarge; i++) {
      const data = await seal(texts[i] ?? '', way.key);
      const published = await way.wire.publish({ subject: way.subject, data, after: sent.place });
      const piece = pieces[i];
      if (published.ok) sent = { sequence: before.sequence, place: published.value, ...(piece && { piece }) };
      else if (published.reason === 'too-large' && most / 2 >= LEAST) isTooLarge = true;
      else return { sent, most, stopped: published };
    }
    if (!isTooLarge) return { sent: { sequence: head.sequence, place: sent.place }, most, stopped: null };
  }
}

const TOO_LARGE: Refusal = {
  reason: 'too-large',
  message: 'An entry is larger than any that a team’s computers take. Nothing behind it was sent.',
};

/** How many of the pieces the server has, by the last one there: it is of the same text, cut in the same way. */
const alreadyThere = (last: Piece | undefined, [first]: readonly Piece[]): number =>
  last !== undefined && last.of === first?.of && last.count === first.count ? last.number : 0;
