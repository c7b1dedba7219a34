import { saySwitches } from '../../domain/correction/switches.ts';
import type { HOUSEKEEPING } from './housekeeping.ts';
import type { WordsFor } from './row.ts';

/** What concerns no single lot, in plain words. */
export const HOUSEKEEPING_WORDS: WordsFor<typeof HOUSEKEEPING> = {
  'setup-changed': ({ set }) => `Setup changed: ${Object.keys(set).join(', ')}`,
  'corrections-switched': ({ set }) => saySwitches(set),
  undone: () => 'Something was undone',
};
