import type { FirstDraft } from '../../src/views/start/first-draft.ts';

/** What each part of the first page works on. */
export interface PartProps {
  readonly draft: FirstDraft;
  readonly put: (set: Partial<FirstDraft>) => void;
}
