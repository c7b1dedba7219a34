import type { Setup } from '../../domain/setup/setup.ts';
import type { CloseTime } from '../../domain/time/close-time.ts';
import type { Instant } from '../../domain/time/instant.ts';
import { sayTime } from '../../domain/time/say-time.ts';
import { RUSH_WORDS, rushOf } from './rush-words.ts';

/** What there is to say of a close, but for how long that is from now. */
export interface CloseLook {
  readonly instant: Instant;
  /** On the store's clock, with a question mark when it is in doubt. */
  readonly when: string;
  /** Whether it is in or near the busy hours; empty when it is neither. */
  readonly rush: string;
}

/** What there is to say of a close, under a setup. */
export function closeLook({ instant, doubts }: CloseTime, setup: Setup): CloseLook {
  const rush = rushOf(setup).of(instant).kind;
  return {
    instant,
    when: `${sayTime(instant, setup.store.zone)}${doubts.length > 0 ? '?' : ''}`,
    rush: RUSH_WORDS[rush],
  };
}
