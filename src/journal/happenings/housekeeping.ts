import * as z from 'zod/mini';
import { setupSectionsSchema } from '../../domain/setup/setup.ts';
import { entryIdSchema } from '../ids.ts';

/** What concerns no single lot. */
export const HOUSEKEEPING = [
  /** Sections of the setup were replaced. */
  z.strictObject({
    kind: z.literal('setup-changed'),
    set: z.partial(setupSectionsSchema),
  }),
  /** Alerts that were shown, by their stable keys. */
  z.strictObject({
    kind: z.literal('alerts-shown'),
    keys: z.array(z.string()).check(z.minLength(1)),
  }),
  /** An earlier entry no longer counts; undoing an undo brings it back. */
  z.strictObject({ kind: z.literal('undone'), entry: entryIdSchema }),
] as const;
