import * as z from 'zod/mini';
import { localDateSchema } from '../time/local-date.ts';
import type { StockCar } from './days-to-sell.ts';

const daysSchema = z.int().check(z.gte(0), z.lte(3650));

/** One car of the dealer's own: sold after so many days, or still there at that age. */
export const stockRecordCarSchema = z.strictObject({
  label: z.optional(z.string().check(z.maxLength(80))),
  days: daysSchema.check(z.describe('days from its arrival until it sold, or its age on the day of the record')),
  sold: z.boolean(),
  enteredAtDays: z._default(
    daysSchema.check(z.describe('its age when the record began; 0 when it was seen from its first day')),
    0,
  ),
});
export type StockRecordCar = z.infer<typeof stockRecordCarSchema>;

/** What the dealer's own cars did, sold and unsold, as it stood on one day. */
export const stockRecordSchema = z.strictObject({
  asOf: localDateSchema,
  cars: z.array(stockRecordCarSchema).check(z.maxLength(2000)),
});
export type StockRecord = z.infer<typeof stockRecordSchema>;

/** The record in the form that days to sell are learned from; none without a record. */
export function stockOf({ stock }: { readonly stock?: StockRecord | undefined }): readonly StockCar[] {
  return (stock?.cars ?? []).map(({ days, sold, enteredAtDays }) => ({ days, sold, enteredAt: enteredAtDays }));
}
