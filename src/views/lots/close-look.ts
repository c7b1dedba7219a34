import { sayClose } from '../../domain/close/say-close.ts';
import type { Setup } from '../../domain/setup/setup.ts';
import type { CloseTime } from '../../domain/time/close-time.ts';
import type { Instant } from '../../domain/time/instant.ts';
import { RUSH_WORDS, rushOf } from './rush-words.ts';

/** What there is to say of a close, but for how long that is from now. */
export interface CloseLook {
  readonly instant: Instant;
  /** On the store's clock, no finer than it is known, with a question mark when it is in doubt. */
  readonly when: string;
  /** Whether it is in or near the busy hours; empty when it is neither. */
  readonly rush: string;
}

/**
 * What there is to say of a close, under a setup.
 * @param near when it became known, so that another year than the plain one is shown
 */
export function closeLook(close: CloseTime, setup: Setup, near: Instant): CloseLook {
  const { instant } = close;
  const rush = rushOf(setup).of(instant).kind;
  return {
    instant,
    when: sayClose(close, setup.store.zone, near),
    rush: RUSH_WORDS[rush],
  };
}
