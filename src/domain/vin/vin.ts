import * as z from 'zod/mini';

/** 17 characters of the VIN alphabet, upper case. Its check digit may be wrong: that is shown, never repaired. */
export const vinSchema = z
  .string()
  .check(z.regex(/^[0-9A-HJ-NPR-Z]{17}$/), z.describe('17 characters without I, O and Q'))
  .brand<'Vin'>();
export type Vin = z.infer<typeof vinSchema>;
