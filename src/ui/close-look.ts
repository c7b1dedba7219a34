import type { Setup } from '../domain/setup/setup.ts';
import type { CloseTime } from '../domain/time/close-time.ts';
import { sayTime } from '../domain/time/say-time.ts';
import type { CloseLook } from './close-lines.tsx';
import { RUSH_WORDS, rushOf } from './rush-words.ts';

/** What there is to say of a close, under a setup. */
export function closeLook({ instant, doubts }: CloseTime, setup: Setup): CloseLook {
  const rush = rushOf(setup).of(instant).kind;
  return {
    instant,
    when: `${sayTime(instant, setup.store.zone)}${doubts.length > 0 ? '?' : ''}`,
    rush: RUSH_WORDS[rush],
    clear: rush === 'clear',
  };
}
