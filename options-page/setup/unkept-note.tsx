import type { SetupSection } from '../../src/domain/setup/setup.ts';
import { faultSentence } from '../../src/domain/setup/setup-faults.ts';
import { useWorkspace } from '../../src/ui/workspace.ts';
import { isUnkept, sectionText } from './section-drafts.ts';
import { useSetupEdit } from './setup-edit.ts';

/** Says that what stands on the screen is not kept, why, and how to go on. */
export function UnkeptNote({ section }: { section: SetupSection }) {
  const { setup } = useWorkspace();
  const { drafts, giveUp, tryAgain } = useSetupEdit();
  const draft = drafts.get(section);
  if (!isUnkept(draft)) return null;
  const overtaken = sectionText(setup, section) !== draft.base;
  return (
    <section class="note warning stack" aria-label="Not saved yet">
      <p class="strong">Not saved yet. Fix the error and it will be saved.</p>
      <ul class="plain-list">
        {draft.state === 'refused' && <li>{draft.refusal}</li>}
        {draft.faults.map((fault) => (
          <li key={fault.path.join('.')}>{faultSentence(fault)}</li>
        ))}
        {overtaken && (
          <li>The saved version has changed since, by an undo or in another tab. Saving yours replaces it.</li>
        )}
      </ul>
      <div class="row">
        {draft.state === 'refused' && (
          <button type="button" onClick={() => tryAgain(section)}>
            Try again
          </button>
        )}
        <button type="button" onClick={() => giveUp(section)}>
          Go back to the saved version
        </button>
      </div>
    </section>
  );
}
