import { worked } from '../capture/worked.ts';
import { altered } from './alter.ts';
import type { Reader } from './readers.ts';

/** An input on which a reader failed; the seed alone makes it again. */
export interface Failure {
  readonly reader: string;
  readonly seed: number;
  readonly message: string;
}

export interface Campaign {
  readonly reader: string;
  readonly inputs: number;
  /** The longest that one took, in seconds of work. */
  readonly slowest: number;
  readonly failures: readonly Failure[];
}

/** No input may take longer, in seconds of work. */
const LONGEST = 1;

/**
 * Gives a reader altered texts, one a seed from `first` on. A reader may refuse; it may not throw, nor take over a second.
 * @param count how many
 */
export async function campaign(reader: Reader, first: number, count: number): Promise<Campaign> {
  const honest = reader.honest();
  const failures: Failure[] = [];
  let slowest = 0;
  const fail = (seed: number, message: string) => failures.push({ reader: reader.name, seed, message });
  for (let seed = first; seed < first + count; seed++) {
    const text = altered(honest, seed);
    const opened = reader.open?.(text);
    const start = worked();
    try {
      await (opened ?? { read: () => reader.read(text) }).read();
    } catch (error) {
      fail(seed, error instanceof Error ? (error.stack ?? error.message).slice(0, 400) : String(error));
    }
    const took = (worked() - start) / 1000;
    opened?.close();
    slowest = Math.max(slowest, took);
    if (took > LONGEST) fail(seed, `took ${took.toFixed(1)} s for ${text.length} characters`);
  }
  return { reader: reader.name, inputs: count, slowest, failures };
}
