import { useState } from 'preact/hooks';
import { sayTime } from '../../src/domain/time/say-time.ts';
import type { Invitation } from '../../src/team/joining/invitation.ts';
import { useWorkspace } from '../../src/ui/workspace.ts';
import { LabeledBox } from './labeled-box.tsx';
import { roleWords } from './role-words.ts';
import { allowed, useTeamAct } from './team-acts.ts';

/** An invitation is read and shown first; joining is a press of its own. */
export function JoinPart() {
  const { setup, say } = useWorkspace();
  const [text, setText] = useState('');
  const [invitation, setInvitation] = useState<Invitation>();
  const { busy, fault, run } = useTeamAct();
  return (
    <section class="panel stack">
      <h2>Join a team</h2>
      {invitation === undefined ? (
        <form
          class="stack"
          onSubmit={(event) => {
            event.preventDefault();
            void run((program) => program.readInvitation(text), setInvitation);
          }}
        >
          <LabeledBox
            label="Invitation"
            value={text}
            onValue={setText}
            hint="The text that the owner of the team gave you. Copy all of it."
            long
          />
          <div class="row">
            <button type="submit" class="main" disabled={busy}>
              Read the invitation
            </button>
          </div>
        </form>
      ) : (
        <div class="stack" role="status">
          <p>
            <strong>{invitation.dealership}</strong> invites this computer as{' '}
            <strong>
              {invitation.name}, {roleWords(invitation.role)}
            </strong>
            . The server is {invitation.addresses.join(', ')}. The invitation is good until{' '}
            {sayTime(invitation.until, setup.store.zone)}, for one computer.
          </p>
          <p>
            Everything that is in this browser’s Headroom goes to the team, sealed, and everything of the team comes
            here. From then on, what you do here is recorded as done by {invitation.name}. Save a backup first if in
            doubt: leaving the team later keeps everything, and takes nothing apart again.
          </p>
          <div class="row">
            <button
              type="button"
              class="main"
              disabled={busy}
              onClick={() =>
                run(
                  allowed((program) => program.joinTeam(invitation)),
                  () => say('Asked to be let in.'),
                )
              }
            >
              {busy ? 'Asking…' : 'Join the team'}
            </button>
            <button type="button" onClick={() => setInvitation(undefined)}>
              Cancel
            </button>
          </div>
        </div>
      )}
      {fault !== undefined && (
        <p class="note warning" role="alert">
          {fault}
        </p>
      )}
    </section>
  );
}
