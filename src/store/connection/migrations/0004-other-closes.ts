import type { Migration } from './migration.ts';

/** Finds the lots whose close is in doubt by every moment that it can mean; a lot without a doubt is not in the index. */
export const otherCloses: Migration = {
  number: 4,
  name: 'other-closes',
  up(_database, transaction) {
    transaction.objectStore('lots').createIndex('otherwise', 'facts.close.otherwise', { multiEntry: true });
  },
};
