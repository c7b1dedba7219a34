import { hashAside } from '../../journal/entry-hash.ts';
import type { DeviceId } from '../../journal/ids.ts';
import type { Piece } from '../message/piece.ts';

interface Collected {
  readonly piece: Piece;
  /** The first message that holds one of them. */
  readonly place: number;
  readonly texts: Map<number, string>;
}

/**
 * Pieces that came and wait for the rest of their message, in whatever order. Nothing of it is kept beyond a run of fetching:
 * the messages are asked for again from the first piece on.
 */
export class Pieces {
  private readonly collected = new Map<string, Collected>();

  /** Takes a piece; the whole text once all are here and it is the one that they name, else null. */
  async add(piece: Piece, place: number): Promise<string | null> {
    const key = `${piece.head.device} ${piece.of} ${piece.count}`;
    const known = this.collected.get(key);
    const texts = (known?.texts ?? new Map<number, string>()).set(piece.number, piece.text);
    this.collected.set(key, { piece, texts, place: Math.min(place, known?.place ?? place) });
    if (texts.size < piece.count) return null;
    this.collected.delete(key);
    const whole = Array.from({ length: piece.count }, (_, i) => texts.get(i + 1) ?? '').join('');
    return (await hashAside(whole)) === piece.of ? whole : '';
  }

  /** Forgets those whose message came in another way, as when it was cut anew. */
  done(device: DeviceId, sequence: number): void {
    for (const [key, { piece }] of this.collected)
      if (piece.head.device === device && piece.head.sequence <= sequence) this.collected.delete(key);
  }

  /** Forgets all: their messages are asked for again. */
  clear(): void {
    this.collected.clear();
  }

  /** What still lacks pieces, of a device or of all: the first message of each, and a sentence. */
  lacking(of?: DeviceId): readonly { readonly device: DeviceId; readonly place: number; readonly message: string }[] {
    return [...this.collected.values()]
      .filter(({ piece }) => of === undefined || piece.head.device === of)
      .map(({ piece: { head, count }, place, texts }) => ({
        device: head.device,
        place,
        message: `Message ${place} of device ${head.device} is one of ${count} pieces, of which ${texts.size} have come. The rest is waited for.`,
      }));
  }
}
