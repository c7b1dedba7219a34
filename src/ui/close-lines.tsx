import type { Instant } from '../domain/time/instant.ts';
import { HOUR } from '../domain/time/units.ts';
import type { CloseLook } from '../views/lots/close-look.ts';
import { timeLeft } from '../views/words/close-words.ts';

/** How long is left and whether that is in busy hours; under it, when. */
export function CloseLines({ look, now }: { look: CloseLook | undefined; now: Instant }) {
  if (look === undefined) return <span class="missing">no close</span>;
  const soon = look.instant > now && look.instant - now < HOUR;
  return (
    <span class="close-text">
      <span>
        <span class={soon ? 'act' : 'strong'}>{timeLeft(look.instant, now)}</span>
        {look.rush !== '' && <span class="small"> {look.rush}</span>}
      </span>
      <span class="quiet small close-when">{look.when}</span>
    </span>
  );
}
