import type { Instant } from '../domain/time/instant.ts';
import { timeLeft } from './close-words.ts';

/** What there is to say of a close, but for how long that is from now. */
export interface CloseLook {
  readonly instant: Instant;
  /** On the store's clock, with a question mark when it is in doubt. */
  readonly when: string;
  /** How it stands to the busy hours. */
  readonly rush: string;
  /** It is well away from them. */
  readonly clear: boolean;
}

const HOUR_MS = 3_600_000;

export function CloseLines({ look, now }: { look: CloseLook | undefined; now: Instant }) {
  if (look === undefined) return <span class="missing">no close</span>;
  const soon = look.instant > now && look.instant - now < HOUR_MS;
  return (
    <span class="close-text">
      <span class={soon ? 'act' : 'strong'}>{timeLeft(look.instant, now)}</span>
      <span class="quiet small close-when">{look.when}</span>
      <span class={look.clear ? 'quiet small' : 'strong small'}>{look.rush}</span>
    </span>
  );
}
