import type { ComponentChildren } from 'preact';
import { setupCautions } from '../../src/domain/setup/setup-cautions.ts';
import { useSetupEdit } from './setup-edit.ts';
import { SETUP_PARTS, type SetupPart } from './setup-parts.ts';
import { UnkeptNote } from './unkept-note.tsx';

export interface PartFrameProps {
  readonly part: SetupPart;
  /** What the part is for, in a sentence or two. */
  readonly intro: ComponentChildren;
  /** Whose rules these really are; said once, here. */
  readonly caution?: ComponentChildren;
  readonly children: ComponentChildren;
}

/** What every part has: its name, what it is for, what is not kept yet, and the way to the next part. */
export function PartFrame({ part, intro, caution, children }: PartFrameProps) {
  const next = SETUP_PARTS[SETUP_PARTS.indexOf(part) + 1];
  return (
    <div class="stack loose setup-part">
      <header class="stack">
        <h1 tabIndex={-1}>{part.title}</h1>
        <p class="setup-prose">{intro}</p>
        {caution && <p class="note setup-prose">{caution}</p>}
      </header>
      {part.sections.map((section) => (
        <UnkeptNote key={section} section={section} />
      ))}
      <OddFigures part={part} />
      {children}
      {next && (
        <p>
          <a class="button" href={`#/setup/${next.id}`}>
            Next: {next.title}
          </a>
        </p>
      )}
    </div>
  );
}

/** Venues and fee schedules say theirs beside the entry. */
const BESIDE_THE_ENTRY: readonly string[] = ['venues', 'feeSchedules'];

/** Figures that are allowed and that no dealer means. */
function OddFigures({ part }: { part: SetupPart }) {
  const { setup } = useSetupEdit();
  const cautions = setupCautions(setup).filter(
    ({ section }) => part.sections.includes(section) && !BESIDE_THE_ENTRY.includes(section),
  );
  return cautions.length === 0 ? null : (
    <ul class="note warning plain-list">
      {cautions.map(({ place, message }) => (
        <li key={place + message}>
          {place === part.title ? '' : `${place}: `}
          {message}
        </li>
      ))}
    </ul>
  );
}
