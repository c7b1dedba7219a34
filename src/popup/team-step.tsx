import { openCompanion } from '../browser/pages.ts';
import { instant } from '../domain/time/instant.ts';
import type { Zone } from '../domain/time/zone.ts';
import type { Store } from '../store/store.ts';
import { isInStep, sayStep } from '../team/step/step.ts';
import { useNow } from '../ui/hooks/use-now.ts';
import { useTeam } from '../ui/hooks/use-team.ts';

/** How this browser stands to its team; nothing where it is in none. */
export function TeamStep({ store, zone }: { readonly store: Store; readonly zone: Zone }) {
  const team = useTeam(store);
  useNow(20_000);
  const now = instant(Date.now());
  if (!team) return null;
  return (
    <p class={isInStep(team, now) ? 'small quiet' : 'small strong'} role="status">
      {team.shown.state === 'out' ? 'Out of the team' : sayStep(team, zone, now)}{' '}
      <button type="button" class="plain inline" onClick={() => openCompanion('#/team').then(() => window.close())}>
        Team
      </button>
    </p>
  );
}
