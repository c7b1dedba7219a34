import * as z from 'zod/mini';
import { switched, switchesSchema } from '../../domain/correction/switches.ts';
import { setupSectionsSchema } from '../../domain/setup/setup.ts';
import { entryIdSchema } from '../ids.ts';
import { aboutSetup, undoing } from './row.ts';

/** What concerns no single lot. */
export const HOUSEKEEPING = [
  /** Sections of the setup were replaced. */
  aboutSetup(
    'setup-changed',
    { set: z.partial(setupSectionsSchema) },
    { fold: (setup, { set }) => ({ ...setup, ...set }), undo: 'where made', pack: 'everything' },
  ),
  /** Corrections from the dealer's own results were switched: on with a value, or off with null. The others stay as they are. */
  aboutSetup(
    'corrections-switched',
    { set: switchesSchema },
    {
      fold: (setup, { set }) => ({ ...setup, corrections: switched(setup?.corrections, set) }),
      undo: 'where made',
      pack: 'everything',
    },
  ),
  /** An earlier entry no longer counts; undoing an undo brings it back. */
  undoing('undone', { entry: entryIdSchema }, { undo: 'where made', pack: 'sale' }),
] as const;
