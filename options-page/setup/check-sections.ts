import * as z from 'zod/mini';
import { type Setup, setupSectionsSchema } from '../../src/domain/setup/setup.ts';
import { type SetupFault, setupFaults } from '../../src/domain/setup/setup-faults.ts';
import { standsTwice } from '../../src/domain/setup/stands-twice.ts';

const someSections = z.partial(setupSectionsSchema);

export type Checked =
  | { readonly ok: true; readonly value: Partial<Setup> }
  | { readonly ok: false; readonly faults: readonly SetupFault[] };

/** Whether changed sections may be kept: every rule of the setup, each fault with the row it is about. */
export function checkSections(set: Partial<Setup>): Checked {
  const result = someSections.safeParse(set);
  if (!result.success) return { ok: false, faults: setupFaults(result.error.issues, set) };
  const faults = standsTwice(result.data);
  return faults.length === 0 ? { ok: true, value: result.data } : { ok: false, faults };
}
