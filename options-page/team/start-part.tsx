import { useState } from 'preact/hooks';
import { useWorkspace } from '../../src/ui/workspace.ts';
import { LabeledBox } from './labeled-box.tsx';
import { allowed, useTeamAct } from './team-acts.ts';

/** A team is started on a server of the dealer's own, which is asked for an answer at once. */
export function StartPart() {
  const { setup, say } = useWorkspace();
  const [dealership, setDealership] = useState(setup.store.name);
  const [name, setName] = useState('');
  const [server, setServer] = useState('');
  const { busy, fault, run } = useTeamAct();
  return (
    <section class="panel stack">
      <h2>Start a team</h2>
      <p>
        A team needs a server that all its computers reach: a small program on a computer of yours that is always on.{' '}
        <code>npm run team-server -- DIR</code> writes everything it needs, says how to run it, and prints the text to
        enter here. This computer becomes the owner’s: it lets others in and puts them out.
      </p>
      <form
        class="stack"
        onSubmit={(event) => {
          event.preventDefault();
          void run(
            allowed((program) => program.startTeam({ dealership, name, server })),
            () => say('The server answered, and the team is started.'),
          );
        }}
      >
        <LabeledBox label="Dealership" value={dealership} onValue={setDealership} />
        <LabeledBox label="Who uses this computer?" value={name} onValue={setName} />
        <LabeledBox
          label="Text of the team’s server"
          value={server}
          onValue={setServer}
          hint="Whoever has this text can let computers in. Don’t send it around."
          long
        />
        <div class="row">
          <button type="submit" class="main" disabled={busy}>
            {busy ? 'Asking the server…' : 'Start the team'}
          </button>
        </div>
      </form>
      {fault !== undefined && (
        <p class="note warning" role="alert">
          {fault}
        </p>
      )}
    </section>
  );
}
