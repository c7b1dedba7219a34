import type { Instant } from '../domain/time/instant.ts';
import { HOUR } from '../domain/time/units.ts';
import type { CloseLook } from '../views/lots/close-look.ts';
import { timeLeft } from '../views/words/close-words.ts';

export function CloseLines({ look, now }: { look: CloseLook | undefined; now: Instant }) {
  if (look === undefined) return <span class="missing">no close</span>;
  const soon = look.instant > now && look.instant - now < HOUR;
  return (
    <span class="close-text">
      <span class={soon ? 'act' : 'strong'}>{timeLeft(look.instant, now)}</span>
      <span class="quiet small close-when">{look.when}</span>
      {look.rush !== '' && <span class="strong small">{look.rush}</span>}
    </span>
  );
}
