import * as backupFiles from './functions/backup-files.mjs';
import * as chains from './functions/chains.mjs';
import * as entries from './functions/entries.mjs';
import * as headAndSeal from './functions/head-and-seal.mjs';
import * as heldAndBare from './functions/held-and-bare.mjs';
import * as later from './functions/later.mjs';
import * as lines from './functions/lines.mjs';
import * as moved from './functions/moved.mjs';
import * as page from './functions/page.mjs';
import * as pictures from './functions/pictures.mjs';
import * as shownRow from './functions/shown-row.mjs';
import * as wholeFile from './functions/whole-file.mjs';

/** Every attack function, by the name that attacks.json calls it. */
export const ATTACKS = new Map(
  Object.entries({
    ...backupFiles,
    ...chains,
    ...entries,
    ...headAndSeal,
    ...heldAndBare,
    ...later,
    ...lines,
    ...moved,
    ...page,
    ...pictures,
    ...shownRow,
    ...wholeFile,
  }),
);
