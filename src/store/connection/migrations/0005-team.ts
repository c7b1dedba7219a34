import type { Migration } from './migration.ts';

/** What the server of a team said of entries, what its devices saw of each other, and pieces of files that are on their way. */
export const team: Migration = {
  number: 5,
  name: 'team',
  up(database) {
    database.createObjectStore('stored', { keyPath: ['device', 'last'] });
    // Only a sighting of entries that are not here has the member.
    database.createObjectStore('sightings', { keyPath: 'id' }).createIndex('open', 'open');
    database.createObjectStore('pieces', { keyPath: ['hash', 'number'] });
  },
};
