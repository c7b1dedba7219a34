import type { Migration } from './migration.ts';

/** Finds the won lots and the disputed ones among tens of thousands, at every wake of the background. */
export const afterSale: Migration = {
  number: 3,
  name: 'after-sale',
  up(_database, transaction) {
    const lots = transaction.objectStore('lots');
    lots.createIndex('ended', 'sale.result.result.ended');
    lots.createIndex('disputed', 'after.disputed');
  },
};
