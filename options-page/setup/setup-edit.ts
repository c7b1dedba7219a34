import { createContext } from 'preact';
import { useContext } from 'preact/hooks';
import type { Setup, SetupSection } from '../../src/domain/setup/setup.ts';
import type { SetupFault } from '../../src/domain/setup/setup-faults.ts';
import type { SectionDrafts } from './section-drafts.ts';

/** What the parts of the Setup screen work on. */
export interface SetupEdit {
  /** The setup as it stands on the screen, changes that could not be kept yet included. */
  readonly setup: Setup;
  readonly drafts: SectionDrafts;
  readonly faults: readonly SetupFault[];
  /** Keeps changed sections as one entry if no rule is broken; otherwise they wait on the screen. */
  readonly change: (set: Partial<Setup>, said: string) => void;
  /** Goes back to the kept version of a section. */
  readonly giveUp: (section: SetupSection) => void;
  /** Tries again to keep a section that the store refused. */
  readonly tryAgain: (section: SetupSection) => void;
}

export const SetupEditContext = createContext<SetupEdit | null>(null);

/** @throws Error outside the Setup screen: our own mistake. */
export function useSetupEdit(): SetupEdit {
  const edit = useContext(SetupEditContext);
  if (edit === null) throw new Error('no Setup screen around this part');
  return edit;
}
