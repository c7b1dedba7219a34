import * as z from 'zod/mini';
import { AFTER_SALE } from './happenings/after-sale.ts';
import { ATTACHMENTS } from './happenings/attachments.ts';
import { BOOKS } from './happenings/books.ts';
import { CLOCK } from './happenings/clock.ts';
import { HOUSEKEEPING } from './happenings/housekeeping.ts';
import { PLAN } from './happenings/plan.ts';
import type { Row, ToldBy } from './happenings/row.ts';
import { SALE } from './happenings/sale.ts';
import { WATCHING } from './happenings/watching.ts';

/** What can happen, a row a kind. A kind that shipped is never renamed or narrowed. */
const ROWS = [
  ...AFTER_SALE,
  ...ATTACHMENTS,
  ...BOOKS,
  ...CLOCK,
  ...HOUSEKEEPING,
  ...PLAN,
  ...SALE,
  ...WATCHING,
] as const;

export type Happening = ToldBy<(typeof ROWS)[number]>;
export type HappeningKind = Happening['kind'];
/** What happens by one kind. */
export type HappeningOf<Kind extends HappeningKind> = Extract<Happening, { readonly kind: Kind }>;

export const HAPPENING_KINDS: readonly HappeningKind[] = ROWS.map(({ kind }) => kind);

type Schemas = (typeof ROWS)[number]['schema'];
// A list that is mapped loses the types of its members; what comes out is still one of them.
export const happeningSchema = z.discriminatedUnion(
  'kind',
  ROWS.map(({ schema }) => schema) as [Schemas, ...Schemas[]],
);

const rows = new Map<string, (typeof ROWS)[number]>(ROWS.map((row) => [row.kind, row]));

/** All that the program knows of a kind; null for one that only a newer version knows. */
export function rowOfKind(kind: string): Pick<Row<Happening>, 'about' | 'undo' | 'pack'> | null {
  return rows.get(kind) ?? null;
}

/** The row of a happening, to be asked about this happening alone. */
export function rowOf(happening: Happening): Row<Happening> {
  // A row takes its own kind only, and it was looked up by that.
  return rows.get(happening.kind) as unknown as Row<Happening>;
}
