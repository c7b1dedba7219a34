import { instant } from '../../src/domain/time/instant.ts';
import type { Zone } from '../../src/domain/time/zone.ts';
import { isInStep, sayStep } from '../../src/team/step/step.ts';
import { useNow } from '../../src/ui/hooks/use-now.ts';
import { useTeam } from '../../src/ui/hooks/use-team.ts';
import { useWorkspace } from '../../src/ui/workspace.ts';
import './team-line.css';

/**
 * "In step, 2:05 PM", at the head of every screen of a browser that is in a team; and while what the others did is not known
 * here, that no screen shows it. What is on its way at this moment needs no such note.
 */
export function TeamLine({ zone }: { zone: Zone }) {
  const team = useTeam(useWorkspace().store);
  useNow(20_000);
  if (!team) return null;
  // What was noted a moment ago must not lie ahead of now.
  const now = instant(Date.now());
  const { state } = team.shown;
  const isBehind = state !== 'asking' && !isInStep({ ...team, notSent: 0 }, now);
  return (
    <section
      aria-label="In step with the team"
      class={isBehind || team.notSent > 0 ? 'team-line small out no-print' : 'team-line small no-print'}
    >
      <a href="#/team">{state === 'out' ? 'Out of the team' : sayStep(team, zone, now)}</a>
      {isBehind && (
        <span>. What the others did since then is not shown on any screen. Ask them before you rely on it.</span>
      )}
    </section>
  );
}
