import type { PurseEntry } from '../../domain/setup/purse-entry.ts';
import type { Setup } from '../../domain/setup/setup.ts';

/** The sections that were ever set, each as its last entry left it, and the purse; null when none ever was. */
export type SetupState = (Partial<Setup> & { readonly purse?: PurseEntry }) | null;
