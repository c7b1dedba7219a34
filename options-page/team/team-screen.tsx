import { isDemo } from '../../src/ui/demo-mode.ts';
import { useTeam } from '../../src/ui/hooks/use-team.ts';
import { useWorkspace } from '../../src/ui/workspace.ts';
import { InvitePart } from './invite-part.tsx';
import { JoinPart } from './join-part.tsx';
import { PeoplePart } from './people-part.tsx';
import { StandingPart } from './standing-part.tsx';
import { StartPart } from './start-part.tsx';
import './team.css';

/** Buyer, manager and bookkeeper at their own computers, with one journal. */
export function TeamScreen() {
  const team = useTeam(useWorkspace().store);
  return (
    <div class="stack loose team">
      <div class="stack">
        <h1>Team</h1>
        <p>
          The buyer’s laptop, the manager’s desk and the bookkeeper’s office with one journal. Each works on its own
          data and waits for nobody; what one does shows on the others within seconds. It is sealed before it leaves a
          computer: the server sees which computer sent how much and when, and nothing else. Without a team, nothing is
          sent anywhere.
        </p>
      </div>
      {isDemo() ? (
        <p class="note">The demo is in no team. Leave the demo to start or join one.</p>
      ) : (
        <Parts team={team} />
      )}
    </div>
  );
}

function Parts({ team }: { readonly team: ReturnType<typeof useTeam> }) {
  if (team === undefined) return <p role="status">Looking…</p>;
  if (team === null)
    return (
      <>
        <JoinPart />
        <StartPart />
      </>
    );
  const { state, role, invitations } = team.shown;
  return (
    <>
      <StandingPart team={team} />
      {state === 'in' && <PeoplePart team={team} />}
      {state === 'in' && role === 'owner' && <InvitePart open={invitations} />}
      <p class="quiet small">
        Everyone in a team reads and changes everything. A server is no backup: go on saving backups. Who may see
        customers’ and sellers’ data is a matter of your local rules.
      </p>
    </>
  );
}
