import type { Setup, SetupSection } from '../../src/domain/setup/setup.ts';
import type { SetupFault } from '../../src/domain/setup/setup-faults.ts';
import { canonicalJson } from '../../src/journal/canonical-json.ts';

/**
 * A section as it stands on the screen while the kept setup does not show it yet: `faulty` breaks a rule and waits to be
 * mended, `saving` is on its way, `kept` is in the journal but not yet in what the page sees, `refused` could not be
 * written.
 */
export interface SectionDraft {
  readonly value: unknown;
  readonly state: 'faulty' | 'saving' | 'kept' | 'refused';
  readonly faults: readonly SetupFault[];
  /** Why the store refused it. */
  readonly refusal?: string;
  /** The kept section when this draft was made or kept, to notice that it has changed since. */
  readonly base: string;
}

export type SectionDrafts = ReadonlyMap<SetupSection, SectionDraft>;

/** A section in one line of text, equal exactly when the sections are. */
export const sectionText = (setup: Partial<Setup>, section: SetupSection): string =>
  setup[section] === undefined ? '' : canonicalJson(setup[section]);

/** The setup with the drafts over it: what the screen shows. */
export function drafted(setup: Setup, drafts: SectionDrafts): Setup {
  // A draft's value has the type of its section; only its rules may be broken.
  return { ...setup, ...Object.fromEntries([...drafts].map(([section, draft]) => [section, draft.value])) } as Setup;
}

/** Without the drafts that the kept setup has caught up with, or overtaken by a change from elsewhere. */
export function settled(setup: Setup, drafts: SectionDrafts): SectionDrafts {
  const open = [...drafts].filter(
    ([section, draft]) => draft.state !== 'kept' || sectionText(setup, section) === draft.base,
  );
  return open.length === drafts.size ? drafts : new Map(open);
}

/** Whether something on the screen would be lost with the page. */
export const isUnkept = (draft: SectionDraft | undefined): draft is SectionDraft =>
  draft !== undefined && (draft.state === 'faulty' || draft.state === 'refused');
