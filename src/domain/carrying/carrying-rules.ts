import * as z from 'zod/mini';
import { positiveCentsSchema, ZERO } from '../money/cents.ts';
import { PPM, ppm, ppmSchema, sharePpmSchema } from '../money/rate.ts';

/** How a lender counts the days of a year; the last three are rarer and follow the definitions of ISDA. */
export const DAY_COUNTS = ['actual/365', 'actual/360', '30/360', '30E/360', '30E/360 ISDA', 'actual/actual'] as const;
export type DayCount = (typeof DAY_COUNTS)[number];

/** A lender's line that pays for cars until they sell. */
export const floorPlanSchema = z.strictObject({
  annualRatePpm: ppmSchema.check(z.describe('interest per year, ppm (87500 is 8.75%)')),
  dayCount: z._default(z.enum(DAY_COUNTS), 'actual/365'),
  advancePpm: z._default(sharePpmSchema.check(z.describe('share of the price that is advanced, ppm')), ppm(PPM)),
  advanceOnFees: z._default(z.boolean().check(z.describe('whether buy fees are advanced too')), false),
  advanceCapCents: z.optional(positiveCentsSchema.check(z.describe('the most advanced on one car; whole cents'))),
  unitFeeCents: z._default(
    positiveCentsSchema.check(z.describe('fee for each car put on the line; whole cents')),
    ZERO,
  ),
  /** Principal to be paid back while the car is still unsold; the dealer's cash takes its place. */
  curtailments: z._default(
    z
      .array(
        z.strictObject({
          day: z.int().check(z.gte(1), z.lte(3650)),
          sharePpm: sharePpmSchema.check(z.describe('share of the original advance, ppm')),
        }),
      )
      .check(
        z.refine((list) => list.reduce((total, c) => total + c.sharePpm, 0) <= PPM, {
          error: 'curtailments add up to more than the whole advance',
        }),
        z.refine((list) => list.every((c, i) => i === 0 || c.day > (list[i - 1]?.day ?? 0)), {
          error: 'curtailments must be in the order of their days',
        }),
      ),
    [],
  ),
});
export type FloorPlan = z.infer<typeof floorPlanSchema>;

/** How long a car sits: a plain number of days, or the owner's median, from which the whole spread follows. */
export const daysToSellSchema = z.discriminatedUnion('kind', [
  z.strictObject({
    kind: z.literal('fixed'),
    days: z.int().check(z.gte(0), z.lte(3650)),
  }),
  z.strictObject({
    kind: z.literal('median'),
    days: z.number().check(z.gte(1), z.lte(3650), z.describe('half of the cars sell within this many days')),
    countsFor: z.optional(
      z
        .number()
        .check(
          z.gte(1),
          z.lte(100_000),
          z.describe(
            'how many cars sold that rests on, those of the stock record among them; 2 and the record when left out',
          ),
        ),
    ),
  }),
]);

export const carryingSchema = z.strictObject({
  floorPlan: z.optional(floorPlanSchema),
  cashAnnualRatePpm: z._default(ppmSchema.check(z.describe('cost of own cash per year, ppm')), ppm(0)),
  lotCentsPerDay: z._default(positiveCentsSchema.check(z.describe('cost of lot space per day; whole cents')), ZERO),
  daysToSell: daysToSellSchema,
  horizonDays: z._default(
    z.int().check(z.gte(1), z.lte(3650), z.describe('the day on which an unsold car is wholesaled')),
    120,
  ),
});
export type Carrying = z.infer<typeof carryingSchema>;
