import * as z from 'zod/mini';
import { positiveCentsSchema } from '../../domain/money/cents.ts';
import { closeTimeSchema } from '../../domain/time/close-time.ts';
import { instantSchema } from '../../domain/time/instant.ts';

/** Where a reading came from; the same words as the journal's evidence uses. */
export const readFromSchema = z.enum(['structured-data', 'page-text', 'pointed']);
export type ReadFrom = z.infer<typeof readFromSchema>;

/**
 * - `certain`: stated crisply and in only one way, or by two layers alike;
 * - `likely`: what a careful reader would take, with something left to check;
 * - `doubtful`: worth showing, not worth relying on.
 */
export const sureSchema = z.enum(['certain', 'likely', 'doubtful']);
export type Sure = z.infer<typeof sureSchema>;

/** One value read at one place. `from`, `text` and `sure` are its evidence in the journal. */
export interface Reading<Value> {
  readonly value: Value;
  readonly from: ReadFrom;
  /** The very text it was read from, at most 400 characters. */
  readonly text: string;
  readonly sure: Sure;
}

/**
 * All readings of a field that differ, best first. When `settled` is false, equally good readings disagree: none is
 * to be taken until the user has picked one.
 */
export interface DraftField<Value> {
  readonly settled: boolean;
  readonly readings: readonly Reading<Value>[];
}

const fieldOf = <Schema extends z.ZodMiniType>(value: Schema) =>
  z.optional(
    z.strictObject({
      settled: z.boolean(),
      readings: z
        .array(
          z.strictObject({
            value,
            from: readFromSchema,
            text: z.string().check(z.maxLength(400)),
            sure: sureSchema,
          }),
        )
        .check(z.minLength(1), z.maxLength(6)),
    }),
  );

const words = z.string().check(z.minLength(1), z.maxLength(200));
const statement = z.string().check(z.minLength(1), z.maxLength(2000));

/** What the page says of one lot. Every field may be missing; an empty field is better than a wrong one. */
export const draftFieldsSchema = z.strictObject({
  vin: fieldOf(z.string().check(z.maxLength(17))),
  year: fieldOf(z.int().check(z.gte(1886), z.lte(2100))),
  make: fieldOf(words),
  model: fieldOf(words),
  trim: fieldOf(words),
  /** Odometer in whole miles, also when the page gives kilometers. */
  miles: fieldOf(z.int().check(z.gte(0), z.lte(2_000_000))),
  lotNumber: fieldOf(words),
  runNumber: fieldOf(words),
  venueName: fieldOf(words),
  sale: fieldOf(words),
  seller: fieldOf(words),
  location: fieldOf(words),
  close: fieldOf(closeTimeSchema),
  /** The bid that stands. */
  priceNow: fieldOf(positiveCentsSchema),
  /** The least that the sale would take as the next bid. */
  nextBid: fieldOf(positiveCentsSchema),
  increment: fieldOf(positiveCentsSchema),
  /** A price at which the lot can be had at once. */
  buyNow: fieldOf(positiveCentsSchema),
  /** What the page says of the title, in its own words. */
  title: fieldOf(words),
  condition: fieldOf(statement),
  transmission: fieldOf(words),
  drive: fieldOf(words),
});
export type DraftFields = z.infer<typeof draftFieldsSchema>;
export type DraftFieldName = keyof DraftFields;
export type FieldValue<Name extends DraftFieldName> = NonNullable<DraftFields[Name]>['readings'][number]['value'];

/** Something the user should know about the reading, with what to do about it. */
export const pageNoteSchema = z.strictObject({
  reason: z.enum([
    'vin-lookalike',
    'other-currency',
    'frame-elsewhere',
    'page-too-large',
    'still-changing',
    'moved-on',
    'place-lost',
    'lot-over',
    'not-our-page',
  ]),
  message: z.string().check(z.maxLength(400)),
});
export type PageNote = z.infer<typeof pageNoteSchema>;

/** The fields that a page of an allowed site may bring up to date by itself. */
export const TIED_FIELDS = ['priceNow', 'close'] as const;
export type TiedField = (typeof TIED_FIELDS)[number];

export const draftLotSchema = z.strictObject({
  /** Tells the lots of one page apart, and stays the same when the same page is read again. */
  key: z.string().check(z.maxLength(200)),
  /** A few words for a checklist, from the page. */
  heading: z.string().check(z.maxLength(200)),
  /** The page about this lot: the page itself, or the lot's own link on a list. */
  pageUrl: z.string().check(z.maxLength(2000)),
  fields: draftFieldsSchema,
  /**
   * Fields that the page ties to this lot's very VIN, and that stayed the same while it was quiet. Filled only by the
   * reading that waits for that.
   */
  tied: z.array(z.enum(TIED_FIELDS)).check(z.maxLength(2)),
});
export type DraftLot = z.infer<typeof draftLotSchema>;

/** What a page holds: one lot, a list to tick, or nothing that looks like a lot. */
export const draftLotsSchema = z.strictObject({
  kind: z.enum(['none', 'one', 'many']),
  pageUrl: z.string().check(z.maxLength(2000)),
  readAt: instantSchema,
  lots: z.array(draftLotSchema).check(z.maxLength(500)),
  notes: z.array(pageNoteSchema).check(z.maxLength(40)),
});
export type DraftLots = z.infer<typeof draftLotsSchema>;
