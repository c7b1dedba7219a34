import { entryHash, sealedHash } from '../entry-hash.ts';
import { contentFromRow } from '../row-tree.ts';
import type { BatchLine, PackLine } from './pack-format.ts';

/** A line of a chain, as the checks of a pack need it. */
export interface PackLink {
  readonly form: 'entry' | 'held' | 'batch' | 'bare';
  readonly id: string;
  readonly device: string;
  readonly sequence: number;
  readonly previous: string;
  readonly hash: string;
  /** The hash made again from what is shown; null where it can't be, and undefined where a row fits no batch. */
  readonly again: string | null | undefined;
  /** Whether a salt went into the hash. */
  readonly salted: boolean;
  /** What it is about, by the writer's own word; null where that is not shown. */
  readonly subject: string | null;
  /** When it was written, by its device's clock; null where that is not shown. */
  readonly at: number | null;
}

export function linksOf(lines: readonly PackLine[]): PackLink[] {
  return lines.flatMap((line): PackLink[] => {
    if ('entry' in line) {
      const { entry } = line;
      return [{ ...place(entry), form: 'entry', again: entryHash(entry), salted: entry.salt !== undefined }];
    }
    if ('held' in line)
      return [{ ...place(line.held), form: 'held', again: sealedHash(line.held, line.held.content), salted: true }];
    if ('batch' in line) return [{ ...place(line.batch), form: 'batch', again: hashOfBatch(line.batch), salted: true }];
    return 'bare' in line ? [{ ...line.bare, form: 'bare', again: null, salted: false, subject: null, at: null }] : [];
  });
}

type Placed = Pick<PackLink, 'id' | 'device' | 'sequence' | 'previous' | 'hash'> & {
  readonly subject: string;
  readonly at: number;
};

const place = ({ id, device, sequence, previous, hash, subject, at }: Placed) => ({
  id,
  device,
  sequence,
  previous,
  hash,
  subject,
  at,
});

function hashOfBatch({ row, ...fields }: BatchLine): string | undefined {
  const content = contentFromRow(row, fields.rows);
  return content === null ? undefined : sealedHash(fields, content);
}

/** How a line is called in a sentence. */
export const linkName = ({ sequence, device }: Pick<PackLink, 'sequence' | 'device'>): string =>
  `Entry number ${sequence} of device ${device}`;

/** Numbers of each device, for a sentence: `number 4, 7 of device X and 2 of device Y`. */
export function numbersOf(links: readonly Pick<PackLink, 'sequence' | 'device'>[]): string {
  const byDevice = new Map<string, number[]>();
  for (const { device, sequence } of links) byDevice.set(device, [...(byDevice.get(device) ?? []), sequence]);
  return [...byDevice].map(([device, numbers]) => `number ${numbers.join(', ')} of device ${device}`).join(' and ');
}
