import * as z from 'zod/mini';
import type { LocalDate } from '../time/local-date.ts';
import { localDateSchema } from '../time/local-date.ts';

/** A state by its two letters, as the post writes it (USPS Publication 28, appendix B). */
export const stateSchema = z
  .string()
  .check(z.regex(/^[A-Z]{2}$/, { error: 'use the two letters of the state, such as ID' }));

/** A resale certificate: with it a seller in that state charges no sales tax to a dealer who buys for resale. */
export const certificateSchema = z.strictObject({
  id: z.string().check(z.minLength(1), z.maxLength(60)),
  state: stateSchema,
  number: z.string().check(z.maxLength(60), z.describe('as printed on it')),
  from: z.optional(localDateSchema.check(z.describe('first day on which it is good'))),
  until: z.optional(localDateSchema.check(z.describe('last day on which it is good; without it, it does not end'))),
  venueIds: z.array(z.string()).check(z.describe('ids of the venues that have it on file')),
});
export type Certificate = z.infer<typeof certificateSchema>;

interface Seller {
  readonly id: string;
  readonly name: string;
  readonly state?: string | undefined;
}

/**
 * What is wrong with the resale certificate for a purchase, in a sentence; null where nothing is, or nobody said in which
 * state the venue sells. Which certificate a state takes, and whether it asks for one, its own rules decide.
 * @param date the day of the purchase
 */
export function certificateFault(
  venue: Seller | undefined,
  certificates: readonly Certificate[],
  date: LocalDate,
): string | null {
  if (venue?.state === undefined) return null;
  const { id, name, state } = venue;
  const own = certificates.filter((one) => one.state === state);
  if (own.length === 0) return `No resale certificate for ${state} is on file. ${name} may charge sales tax.`;
  const good = own.filter(({ from, until }) => (from ?? date) <= date && date <= (until ?? date));
  if (good.some(({ venueIds }) => venueIds.includes(id))) return null;
  const [first] = good;
  if (first !== undefined) return `${name} does not have your resale certificate for ${state} yet (${named(first)}).`;
  const ended = own.filter(({ until }) => until !== undefined && until < date).at(-1);
  return ended === undefined
    ? `Your resale certificate for ${state} was not good yet on the day of the purchase.`
    : `Your resale certificate for ${state} (${named(ended)}) had run out on the day of the purchase. ${name} may charge sales tax.`;
}

const named = ({ number }: Certificate): string => (number === '' ? 'without a number' : `no. ${number}`);
