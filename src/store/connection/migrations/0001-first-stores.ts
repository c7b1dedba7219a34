import type { Migration } from './migration.ts';

export const firstStores: Migration = {
  number: 1,
  name: 'first-stores',
  up(database) {
    const entries = database.createObjectStore('entries', { keyPath: 'id' });
    entries.createIndex('subject', 'subject');
    entries.createIndex('sequence', ['device', 'sequence'], { unique: true });
    // Only an undo has this member, so the index holds the undos by what they undo.
    entries.createIndex('undoes', 'happening.entry');
    const lots = database.createObjectStore('lots', { keyPath: 'id' });
    lots.createIndex('close', 'facts.close.instant');
    lots.createIndex('vin', 'facts.vin');
    database.createObjectStore('setup');
    database.createObjectStore('alerts', { keyPath: 'key' });
    database.createObjectStore('meta');
  },
};
