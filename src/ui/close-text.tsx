import type { CloseTime } from '../domain/time/close-time.ts';
import type { Instant } from '../domain/time/instant.ts';
import { sayTime } from '../domain/time/say-time.ts';
import { timeLeft } from './close-words.ts';
import { RUSH_WORDS, rushOf } from './rush-words.ts';
import { useWorkspace } from './workspace.ts';

/** When a lot closes on the store's clock, how long that is from now, and how it stands to the busy hours. */
export function CloseText({ close, now }: { close: CloseTime | undefined; now: Instant }) {
  const { setup } = useWorkspace();
  if (close === undefined) return <span class="missing">no close</span>;
  const soon = close.instant > now && close.instant - now < 3_600_000;
  const rush = rushOf(setup).of(close.instant).kind;
  return (
    <span class="close-text">
      <span class={soon ? 'act' : 'strong'}>{timeLeft(close.instant, now)}</span>
      <span class="quiet small close-when">
        {sayTime(close.instant, setup.store.zone)}
        {close.doubts.length > 0 && '?'}
      </span>
      <span class={rush === 'clear' ? 'quiet small' : 'strong small'}>{RUSH_WORDS[rush]}</span>
    </span>
  );
}
