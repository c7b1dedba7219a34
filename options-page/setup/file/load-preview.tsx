import { STARTING_BOOKKEEPING } from '../../../src/domain/accounts/accounts.ts';
import { DEFAULT_ESTIMATION } from '../../../src/domain/retail/estimation.ts';
import type { Setup } from '../../../src/domain/setup/setup.ts';
import { cautionInFile, setupCautions } from '../../../src/domain/setup/setup-cautions.ts';
import { type SetupChange, setupChanges } from '../../../src/domain/setup/setup-changes.ts';
import { useWorkspace } from '../../../src/ui/workspace.ts';
import { useSetupEdit } from '../setup-edit.ts';
import { SETUP_PARTS } from '../setup-parts.ts';

export interface LoadPreviewProps {
  readonly name: string;
  readonly loaded: Setup;
  readonly onDone: () => void;
}

const SHOWN = 12;

/** What a checked file would change, section by section, and the button that does it. */
export function LoadPreview({ name, loaded, onDone }: LoadPreviewProps) {
  const { setup } = useWorkspace();
  const { change, drafts, giveUp } = useSetupEdit();
  const taken = withOptional(loaded, setup);
  const changes = setupChanges(setup, taken);
  const cautions = setupCautions(loaded);
  if (changes.length === 0) {
    return (
      <p class="note">
        {name} is valid and matches the current setup. There is nothing to load.{' '}
        <button type="button" class="plain" onClick={onDone}>
          Close
        </button>
      </p>
    );
  }
  return (
    <div class="panel stack">
      <h3>{name} is valid. Loading it changes this:</h3>
      {SETUP_PARTS.map((part) => {
        const own = changes.filter((each) => part.sections.some((section) => section === each.section));
        return own.length === 0 ? null : <ChangeList key={part.id} title={part.title} changes={own} />;
      })}
      {cautions.length > 0 && (
        <ul class="note warning plain-list">
          {cautions.map(cautionInFile).map((sentence) => (
            <li key={sentence}>{sentence}</li>
          ))}
        </ul>
      )}
      <div class="row">
        <button
          type="button"
          class="main"
          onClick={() => {
            for (const section of drafts.keys()) giveUp(section);
            change(taken, `Setup loaded from ${name}.`);
            onDone();
          }}
        >
          Replace the current setup
        </button>
        <button type="button" onClick={onDone}>
          Cancel
        </button>
      </div>
    </div>
  );
}

/** What a file may leave out: what holds without a word then takes the place of what is there. */
function withOptional(loaded: Setup, present: Setup): Setup {
  return {
    ...loaded,
    ...(loaded.estimation === undefined && present.estimation !== undefined && { estimation: DEFAULT_ESTIMATION }),
    ...(loaded.corrections === undefined && present.corrections !== undefined && { corrections: {} }),
    ...(loaded.reconTemplates === undefined && present.reconTemplates !== undefined && { reconTemplates: [] }),
    ...(loaded.books === undefined && present.books !== undefined && { books: STARTING_BOOKKEEPING }),
  };
}

function ChangeList({ title, changes }: { title: string; changes: readonly SetupChange[] }) {
  const rest = changes.length - SHOWN;
  return (
    <details open={changes.length <= SHOWN}>
      <summary>
        <strong>{title}</strong>{' '}
        <span class="quiet small">{changes.length === 1 ? '1 change' : `${changes.length} changes`}</span>
      </summary>
      <ul class="plain-list">
        {changes.slice(0, rest > 3 ? SHOWN : undefined).map((each) => (
          <li key={`${each.place} ${each.what}`}>
            {each.place}: {changeInWords(each)}
          </li>
        ))}
        {rest > 3 && <li>and {rest} more</li>}
      </ul>
    </details>
  );
}

function changeInWords({ what, before, after }: SetupChange): string {
  if (before !== undefined && after !== undefined) return `${before} becomes ${after}`;
  return { new: 'new', gone: 'removed', changed: 'changed' }[what];
}
