import { useRef } from 'preact/hooks';
import { useMedia } from '../../src/ui/hooks/use-media.ts';
import { isUnkept } from './section-drafts.ts';
import { useSetupEdit } from './setup-edit.ts';
import { partState, SETUP_PARTS, type SetupPart } from './setup-parts.ts';

/** The list of parts: beside the part where there is room, folded above it where there is not. */
export function SetupNav({ current }: { current: SetupPart | undefined }) {
  const narrow = useMedia('(max-width: 760px)');
  const folded = useRef<HTMLDetailsElement>(null);
  const list = (
    <ol class="setup-parts">
      {SETUP_PARTS.map((part) => (
        <PartLink
          key={part.id}
          part={part}
          current={part === current}
          onFollow={() => folded.current?.removeAttribute('open')}
        />
      ))}
    </ol>
  );
  if (!narrow) {
    return (
      <nav class="setup-nav no-print" aria-label="Parts of the setup">
        {list}
      </nav>
    );
  }
  const position = current === undefined ? 0 : SETUP_PARTS.indexOf(current) + 1;
  return (
    <nav class="setup-nav no-print" aria-label="Parts of the setup">
      <details ref={folded} class="setup-fold">
        <summary>
          Setup: {current?.title ?? 'choose a part'}
          {position > 0 && (
            <span class="quiet small">
              {' '}
              {position} of {SETUP_PARTS.length}
            </span>
          )}
        </summary>
        {list}
      </details>
    </nav>
  );
}

function PartLink({ part, current, onFollow }: { part: SetupPart; current: boolean; onFollow: () => void }) {
  const { setup, drafts } = useSetupEdit();
  const unkept = part.sections.some((section) => isUnkept(drafts.get(section)));
  const state = unkept ? 'not saved yet' : partState(part, setup);
  return (
    <li>
      <a href={`#/setup/${part.id}`} aria-current={current ? 'page' : undefined} onClick={onFollow}>
        <span>{part.title}</span>
        {state !== '' && <span class={unkept ? 'small strong' : 'small quiet'}>{state}</span>}
      </a>
    </li>
  );
}
