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
      intro="The setup is one file that you can keep, change by hand, or take to another computer. It holds no lots; those are kept under Keep."
    >
      <section class="stack">
        <h2>Save it</h2>
        {unkept.length > 0 && (
          <p class="note warning setup-prose">
            The file holds what is kept. Still to be mended, and not in it:{' '}
            {unkept.map(({ title }) => title).join(', ')}.
          </p>
        )}
        <p>
          <button
            type="button"
            onClick={() => {
              saveFile(new Blob([writeSetupFile(setup)], { type: 'application/json' }), SETUP_FILE_NAME);
              say('The setup is saved to a file, where your browser keeps downloads.');
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
