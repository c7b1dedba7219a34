import { firstStores } from './0001-first-stores.ts';
import type { Migration } from './migration.ts';

/** Every migration, in order. The version of the database is the number of the last. */
export const MIGRATIONS: readonly Migration[] = [firstStores];
