import * as z from 'zod/mini';
import { type Setup, setupSectionsSchema } from '../../src/domain/setup/setup.ts';
import { type SetupFault, setupFaults } from '../../src/domain/setup/setup-faults.ts';

const someSections = z.partial(setupSectionsSchema);

export type Checked =
  | { readonly ok: true; readonly value: Partial<Setup> }
  | { readonly ok: false; readonly faults: readonly SetupFault[] };

/** Whether changed sections may be kept: every rule of the setup, each fault with the row it is about. */
export function checkSections(set: Partial<Setup>): Checked {
  const result = someSections.safeParse(set);
  return result.success
    ? { ok: true, value: result.data }
    : { ok: false, faults: setupFaults(result.error.issues, set) };
}
