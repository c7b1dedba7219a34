import * as z from 'zod/mini';
import { termsSchema } from '../accounts/terms.ts';

/** Somebody who sends bills, and his terms. */
export const vendorSchema = z.strictObject({
  name: z.string().check(z.minLength(1), z.maxLength(120), z.describe('as on the bills')),
  terms: termsSchema,
});
