import { SETUP_FILE_NAME, writeSetupFile } from '../../../src/domain/setup/setup-file.ts';
import { saveFile } from '../../../src/ui/save-file.ts';
import { useWorkspace } from '../../../src/ui/workspace.ts';
import { PartFrame } from '../part-frame.tsx';
import { isUnkept } from '../section-drafts.ts';
import { useSetupEdit } from '../setup-edit.ts';
import { SETUP_PARTS, type SetupPart } from '../setup-parts.ts';
import { LoadSetup } from './load-setup.tsx';

/** The whole setup as one file: to keep, to hand to another computer, to work out a max bid on the command line. */
export function FilePart({ part }: { part: SetupPart }) {
  const { setup, say } = useWorkspace();
  const { drafts } = useSetupEdit();
  const unkept = SETUP_PARTS.filter((each) => each.sections.some((section) => isUnkept(drafts.get(section))));
  return (
    <PartFrame
      part={part}
      intro="The setup is one file that you can save, edit by hand, or take to another computer. It holds no lots; those are under Backup."
    >
      <section class="stack">
        <h2>Save</h2>
        {unkept.length > 0 && (
          <p class="note warning setup-prose">
            The file holds what is saved. Still to fix, and not in it: {unkept.map(({ title }) => title).join(', ')}.
          </p>
        )}
        <p>
          <button
            type="button"
            onClick={() => {
              saveFile(new Blob([writeSetupFile(setup)], { type: 'application/json' }), SETUP_FILE_NAME);
              say('Setup file saved to your downloads.');
            }}
          >
            Save the setup to a file
          </button>
        </p>
      </section>
      <LoadSetup />
    </PartFrame>
  );
}
