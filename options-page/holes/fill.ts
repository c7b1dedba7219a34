import type { Setup } from '../../src/domain/setup/setup.ts';

/** What every question that a max bid waits for works on. */
export interface FillProps {
  readonly setup: Setup;
  /** Saves the sections of the setup that the answer changes. */
  readonly onFill: (set: Partial<Setup>, said: string) => void;
}
