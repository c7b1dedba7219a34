import { instant } from '../../src/domain/time/instant.ts';
import { MINUTE } from '../../src/domain/time/units.ts';
import type { TeamStanding } from '../../src/store/team/team-state.ts';
import { sayStep } from '../../src/team/step/step.ts';
import { useNow } from '../../src/ui/hooks/use-now.ts';
import { useWorkspace } from '../../src/ui/workspace.ts';
import { countWords } from '../../src/views/words/count-words.ts';
import { roleWords } from './role-words.ts';
import { SureButton } from './sure-button.tsx';
import { useTeamAct } from './team-acts.ts';

/** A clock that is further off than this is said: the order of what happens goes by clocks. */
const CLOCK_OFF = 2 * MINUTE;

/** How this computer stands to its team, what was left out, and the way out. */
export function StandingPart({ team }: { readonly team: TeamStanding }) {
  const { setup, say } = useWorkspace();
  useNow(10_000);
  const now = instant(Date.now());
  const { fault, run } = useTeamAct();
  const { shown, progress, stopped } = team;
  const off = progress.ahead ?? 0;
  const isFirst = shown.state === 'in' && progress.inStepAt === null && progress.last > 0;
  return (
    <section class="panel stack">
      <h2>{shown.name}</h2>
      <p>
        This computer is in the team as {roleWords(shown.role)}, at {shown.addresses.join(', ')}.{' '}
        <strong role="status">
          {shown.state === 'out' ? 'It was put out.' : sayStep(team, setup.store.zone, now)}
        </strong>
      </p>
      {isFirst && (
        <div class="stack">
          <p id="team-fetching">Fetching what the team has. You can use every screen meanwhile, and close this one.</p>
          <progress value={progress.place} max={progress.last} aria-labelledby="team-fetching" />
        </div>
      )}
      {stopped !== null && <p class="note warning">{stopped}</p>}
      {Math.abs(off) > CLOCK_OFF && (
        <p class="note warning">
          This computer’s clock is {countWords(Math.round(Math.abs(off) / MINUTE), 'minute', 'minutes')}{' '}
          {off > 0 ? 'ahead of' : 'behind'} the server’s. Put the wrong one right: later changes win by their time.
        </p>
      )}
      {progress.told.length > 0 && (
        <details>
          <summary>{countWords(progress.told.length, 'thing', 'things')} to know</summary>
          <ul class="plain-list small">
            {progress.told.map((sentence) => (
              <li key={sentence}>{sentence}</li>
            ))}
          </ul>
        </details>
      )}
      <div class="row">
        <SureButton
          label="Leave the team"
          sure="Leave: nothing is sent or fetched any more"
          onSure={() =>
            run(
              (program) => program.leaveTeam(),
              () => say('Left the team. Everything that was here is still here.'),
            )
          }
        />
      </div>
      {fault !== undefined && (
        <p class="note warning" role="alert">
          {fault}
        </p>
      )}
    </section>
  );
}
