import * as z from 'zod/mini';
import { TIED_FIELDS, type TiedField } from '../capture/draft/draft-lot.ts';
import { evidenceSchema } from '../domain/lot/evidence.ts';
import type { LotFacts } from '../domain/lot/lot.ts';
import { positiveCentsSchema } from '../domain/money/cents.ts';
import { closeTimeSchema } from '../domain/time/close-time.ts';
import { HOUR } from '../domain/time/units.ts';
import { namesAnotherCar } from './another-car.ts';

/**
 * Why a change is not written by itself: the page names another car, a bid falls or leaps, a close comes sooner or moves by
 * days.
 */
const WHY_ASKED = ['other-car', 'lower', 'leap', 'sooner', 'moved'] as const;
export type WhyAsked = (typeof WHY_ASKED)[number];

/** What a page says that the user has to say yes to first, with where it says so. */
const askedChangeSchema = z.discriminatedUnion('field', [
  z.strictObject({
    field: z.literal('priceNow'),
    after: positiveCentsSchema,
    why: z.enum(WHY_ASKED),
    evidence: evidenceSchema,
  }),
  z.strictObject({
    field: z.literal('close'),
    after: closeTimeSchema,
    why: z.enum(WHY_ASKED),
    evidence: evidenceSchema,
  }),
]);
export type AskedChange = z.infer<typeof askedChangeSchema>;

/** Such questions as they travel to the popup. */
export const askedChangesSchema = z.array(askedChangeSchema).check(z.maxLength(TIED_FIELDS.length));

/** A bid that rises by half and by more than this is looked at first; in cents. */
const LEAP_CENTS = 1000_00;
const LEAP_FACTOR = 1.5;
/** A bid that doubles is, however small. */
const DOUBLE = 2;
/** Sales put a close off by minutes when bids come late; by more than this it is another day's. */
const PUT_OFF_MS = 3 * HOUR;
/** A close that comes sooner by less is the same one read a little differently. */
const SLACK_MS = 90_000;

/** Why the change of a field must be asked about; null when a page may write it. A fact that was not known is no change. */
export function whyAsked(field: TiedField, known: LotFacts, next: LotFacts): WhyAsked | null {
  if (namesAnotherCar(known, next)) return 'other-car';
  return field === 'priceNow' ? whyPriceAsked(known.priceNow, next.priceNow) : whyCloseAsked(known.close, next.close);
}

function whyPriceAsked(before: LotFacts['priceNow'], after: LotFacts['priceNow']): WhyAsked | null {
  if (before === undefined || after === undefined) return null;
  if (after < before) return 'lower';
  const leaps = after >= LEAP_FACTOR * before && after - before > LEAP_CENTS;
  return leaps || after >= DOUBLE * before ? 'leap' : null;
}

function whyCloseAsked(before: LotFacts['close'], after: LotFacts['close']): WhyAsked | null {
  if (before === undefined || after === undefined) return null;
  if (after.instant < before.instant - SLACK_MS) return 'sooner';
  return after.instant > before.instant + PUT_OFF_MS ? 'moved' : null;
}
