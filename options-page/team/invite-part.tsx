import { useId, useState } from 'preact/hooks';
import { sayTime } from '../../src/domain/time/say-time.ts';
import type { TeamInvitation } from '../../src/store/connection/kept-team.ts';
import { ChoiceInput } from '../../src/ui/inputs/choice-input.tsx';
import { useWorkspace } from '../../src/ui/workspace.ts';
import { LabeledBox } from './labeled-box.tsx';
import { QrCode } from './qr-code.tsx';
import { ROLES, roleWords } from './role-words.ts';
import { useTeamAct } from './team-acts.ts';

/** An invitation, as a text and as a QR code, good once and for a day; and those that nobody has used yet. */
export function InvitePart({ open }: { readonly open: readonly TeamInvitation[] }) {
  const { setup, say } = useWorkspace();
  const [name, setName] = useState('');
  const [role, setRole] = useState('manager');
  const [made, setMade] = useState<{ readonly name: string; readonly text: string }>();
  const { busy, fault, run } = useTeamAct();
  const id = useId();
  return (
    <section class="panel stack">
      <h2>Invite a computer</h2>
      <form
        class="stack"
        onSubmit={(event) => {
          event.preventDefault();
          void run(
            (program) => program.invite(name, role),
            (text) => {
              setMade({ name: name.trim(), text });
              setName('');
            },
          );
        }}
      >
        <LabeledBox label="Who is it for?" value={name} onValue={setName} />
        <ChoiceInput
          label="Role"
          value={role}
          choices={ROLES.map((value) => ({ value, label: roleWords(value) }))}
          onCommit={(value) => setRole(value ?? 'manager')}
          hint="Roles are words for the others to read. Only an owner’s computer lets in and puts out; it gets the keys of the server."
        />
        <div class="row">
          <button type="submit" disabled={busy}>
            Make an invitation
          </button>
        </div>
      </form>
      {fault !== undefined && (
        <p class="note warning" role="alert">
          {fault}
        </p>
      )}
      {made !== undefined && (
        <div class="stack" role="status">
          <p>
            For <strong>{made.name}</strong>, good for one computer, for a day. Hand it over in person or by a way that
            nobody else reads: the first computer that uses it is let in, by this one, while this browser is open.
          </p>
          <div class="field wide">
            <label class="label" for={id}>
              Invitation for {made.name}
            </label>
            <textarea id={id} rows={4} readOnly value={made.text} onFocus={(event) => event.currentTarget.select()} />
          </div>
          <div class="row">
            <button
              type="button"
              onClick={() =>
                navigator.clipboard.writeText(made.text).then(
                  () => say('Copied.'),
                  () => say('This browser did not copy it. Select the text and copy it by hand.'),
                )
              }
            >
              Copy
            </button>
            <button type="button" onClick={() => setMade(undefined)}>
              Hide
            </button>
          </div>
          <details>
            <summary>As a QR code</summary>
            <QrCode text={made.text} label={`The invitation for ${made.name} as a QR code`} />
          </details>
        </div>
      )}
      {open.length > 0 && (
        <ul class="plain-list" aria-label="Invitations nobody has used">
          {open.map((one) => (
            <li key={one.id} class="row apart">
              <span>
                {one.name}, {roleWords(one.role)}: not used yet, good until {sayTime(one.until, setup.store.zone)}
              </span>
              <button type="button" onClick={() => run((program) => program.takeBack(one.id))}>
                Cancel it
              </button>
            </li>
          ))}
        </ul>
      )}
    </section>
  );
}
