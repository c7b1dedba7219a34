import { type Instant, instant } from './instant.ts';

/**
 * The computer's clock stood ahead and was put back: it had come to show `showed`, and then went on from `to`. What was
 * written between the two carries a time that is too late.
 */
export interface ClockCorrection {
  readonly showed: Instant;
  readonly to: Instant;
}

/** A time that a clock put down, as far as it is known to be right: one that ran ahead counts as the moment of its correction. */
export function putRight(at: Instant, corrections: readonly ClockCorrection[]): Instant {
  return corrections.reduce((right, { showed, to }) => (right > to && right <= showed ? to : right), at);
}

const KEY = 'clock-put-right';

/** A correction as a key among those of what was said, and so of what is known on every device. */
export const correctionKey = ({ showed, to }: ClockCorrection): string => `${KEY} ${showed} ${to}`;

/** The corrections among such keys, the latest first: an earlier one may have put right what a later one says. */
export function correctionsIn(keys: Iterable<string>): ClockCorrection[] {
  const found: ClockCorrection[] = [];
  for (const key of keys) {
    if (!key.startsWith(KEY)) continue;
    const [, showed, to] = key.split(' ').map(Number);
    if (showed !== undefined && to !== undefined) found.push({ showed: instant(showed), to: instant(to) });
  }
  return found.sort((a, b) => b.to - a.to);
}
