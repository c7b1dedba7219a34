import type { Setup } from '../../domain/setup/setup.ts';

/** The sections that were ever set, each as its last entry left it; null when none ever was. */
export type SetupState = Partial<Setup> | null;
