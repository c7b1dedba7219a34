import type { Migration } from './migration.ts';

export const files: Migration = {
  number: 2,
  name: 'files',
  up(database) {
    database.createObjectStore('files', { keyPath: 'hash' });
  },
};
