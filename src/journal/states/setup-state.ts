import type { PurseEntry } from '../../domain/setup/purse-entry.ts';
import type { Setup } from '../../domain/setup/setup.ts';

/** The sections that were ever set, each as its last entry left it, and the purse; null when none ever was. */
export type SetupState = (Partial<Setup> & { readonly purse?: PurseEntry }) | null;

/** The sections alone: the purse is no part of how the dealer works, so it is in no file of the setup. Null when none was set. */
export function sectionsOf(state: SetupState): Partial<Setup> | null {
  const { purse: _, ...sections } = state ?? {};
  return Object.keys(sections).length === 0 ? null : sections;
}
