import * as z from 'zod/mini';
import { positiveCentsSchema, ZERO } from '../money/cents.ts';
import { PPM, ppm, ppmSchema, sharePpmSchema } from '../money/rate.ts';

/** The least profit worth doing the deal for. All three are checked; the largest binds. */
export const profitRulesSchema = z.strictObject({
  dollarsCents: positiveCentsSchema.check(z.describe('minimum expected profit per car; whole cents')),
  shareOfRetailPpm: z._default(ppmSchema.check(z.describe('minimum profit as a share of retail, ppm')), ppm(0)),
  perCashDayPpm: z._default(
    ppmSchema.check(
      z.describe('minimum profit per dollar of own cash and expected day to sell, ppm (1000 is 0.1% a day)'),
    ),
    ppm(0),
  ),
  lossChancePpm: z._default(
    sharePpmSchema.check(
      z.describe('the chance of losing money must not be above this, ppm (250000 is 1 in 4); no limit when left out'),
    ),
    ppm(PPM),
  ),
});
export type ProfitRules = z.infer<typeof profitRulesSchema>;

/** Costs that every car carries, whatever it is. */
export const standingCostsSchema = z.strictObject({
  packCents: z._default(positiveCentsSchema, ZERO),
  overheadCents: z._default(positiveCentsSchema.check(z.describe('overhead charged to each car; whole cents')), ZERO),
  sellingCents: z._default(positiveCentsSchema.check(z.describe('cost of selling it; whole cents')), ZERO),
  reconCents: z._default(
    positiveCentsSchema.check(z.describe('recon used when a lot has no lines of its own; whole cents')),
    ZERO,
  ),
});
export type StandingCosts = z.infer<typeof standingCostsSchema>;

/** Canceled sales: how often, and what is not refunded. */
export const undoneSchema = z.strictObject({
  chancePpm: z._default(sharePpmSchema, ppm(0)),
  lostCents: z._default(positiveCentsSchema.check(z.describe('what is lost each time; whole cents')), ZERO),
  lostRatePpm: z._default(ppmSchema.check(z.describe('and this share of the hammer price, ppm')), ppm(0)),
});
export type UndoneRule = z.infer<typeof undoneSchema>;

/** A state of the title: what it leaves of retail, and whether a lender takes it. */
export const titleBrandSchema = z.strictObject({
  id: z.string().check(z.minLength(1), z.maxLength(60)),
  name: z.string().check(z.minLength(1), z.maxLength(80)),
  keepsPpm: z._default(sharePpmSchema.check(z.describe('share of clean retail that it brings, ppm')), ppm(PPM)),
  unconfirmed: z.optional(
    z.literal(true).check(z.describe('keepsPpm is only a starting figure: no max bid until the dealer confirms it')),
  ),
  floorable: z._default(z.boolean().check(z.describe('whether it can go on the floor plan')), true),
  paper: z.optional(z.string().check(z.maxLength(400), z.describe('the papers it needs'))),
  caution: z.optional(z.string().check(z.maxLength(400), z.describe('cautions when buying or selling one'))),
});
export type TitleBrand = z.infer<typeof titleBrandSchema>;
