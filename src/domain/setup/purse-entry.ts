import * as z from 'zod/mini';
import { centsSchema, positiveCentsSchema } from '../money/cents.ts';
import { PPM } from '../money/rate.ts';
import { instantSchema } from '../time/instant.ts';
import { localDateSchema } from '../time/local-date.ts';

/** Money that comes in, or goes out where it is below zero, on a day that is known before: a payday, a car that is sold. */
const datedMoneySchema = z.strictObject({
  date: localDateSchema,
  cents: centsSchema,
  what: z.string().check(z.minLength(1), z.maxLength(80)),
});

/** More than this on one screen nobody reads, and more places nobody has to fill in one week. */
export const MOST_DATED = 20;
export const MOST_PLACES = 500;

/** The cash, the line and the places that the user has for cars, as he counted them. */
export const purseEntrySchema = z.strictObject({
  /** Cash for cars, before anything is paid that was won and is not paid yet. */
  cashCents: positiveCentsSchema,
  /** When he counted it: what was paid for won cars since comes off. */
  countedAt: instantSchema,
  /** What is left of the floor line, before cars that are won and not funded yet; absent without a line. */
  lineCents: z.optional(positiveCentsSchema),
  /** Places left on the lot; absent where they never run out. */
  places: z.optional(z.int().check(z.gte(0), z.lte(MOST_PLACES))),
  moves: z.optional(z.array(datedMoneySchema).check(z.maxLength(MOST_DATED))),
  /** Lots that close until then share it: the coming weekend, or up to and with a day, such as the next payday. */
  until: z.union([z.literal('weekend'), localDateSchema]),
  /** The chance that the user allows of more wins than the cash pays for, ppm. Absent or 0: never. */
  overspendPpm: z.optional(z.int().check(z.gte(0), z.lte(PPM / 4))),
});
export type PurseEntry = z.infer<typeof purseEntrySchema>;
