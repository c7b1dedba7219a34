import { firstStores } from './0001-first-stores.ts';
import { files } from './0002-files.ts';
import { afterSale } from './0003-after-sale.ts';
import { otherCloses } from './0004-other-closes.ts';
import { team } from './0005-team.ts';
import type { Migration } from './migration.ts';

/** Every migration, in order. The version of the database is the number of the last. */
export const MIGRATIONS: readonly Migration[] = [firstStores, files, afterSale, otherCloses, team];
