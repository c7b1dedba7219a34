import * as z from 'zod/mini';
import { AFTER_SALE } from './happenings/after-sale.ts';
import { ATTACHMENTS } from './happenings/attachments.ts';
import { BOOKS } from './happenings/books.ts';
import { CLOCK } from './happenings/clock.ts';
import { HOUSEKEEPING } from './happenings/housekeeping.ts';
import { SALE } from './happenings/sale.ts';
import { WATCHING } from './happenings/watching.ts';

/** What can happen. One member a kind; a kind that shipped is never renamed or narrowed. */
export const happeningSchema = z.discriminatedUnion('kind', [
  ...AFTER_SALE,
  ...ATTACHMENTS,
  ...BOOKS,
  ...CLOCK,
  ...HOUSEKEEPING,
  ...SALE,
  ...WATCHING,
]);
export type Happening = z.infer<typeof happeningSchema>;
