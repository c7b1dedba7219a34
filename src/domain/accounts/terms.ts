import * as z from 'zod/mini';
import { type BusinessCalendar, isBusinessDay } from '../deadline/business-calendar.ts';
import { type Outcome, ok, refuse } from '../outcome.ts';
import { addDays } from '../time/calendar-day.ts';
import type { LocalDate } from '../time/local-date.ts';

const days = z.int().check(z.gte(0), z.lte(365));

/** When a vendor wants to be paid, counted from the day of the bill. */
export const termsSchema = z.discriminatedUnion('by', [
  z.strictObject({
    by: z.literal('days'),
    days,
    /** Paid within so many days, so many hundredths of a percent are taken off. */
    discount: z.optional(z.strictObject({ basisPoints: z.int().check(z.gte(1), z.lte(5000)), days })),
  }),
  z.strictObject({ by: z.literal('business-days'), days }),
  z.strictObject({ by: z.literal('day-of-next-month'), day: z.int().check(z.gte(1), z.lte(28)) }),
  z.strictObject({ by: z.literal('end-of-next-month') }),
]);
export type Terms = z.infer<typeof termsSchema>;

/** The day on which a bill is due. Business days are counted from the day after the bill's. */
export function dueOn(date: LocalDate, terms: Terms, calendar: BusinessCalendar): LocalDate {
  switch (terms.by) {
    case 'days':
      return addDays(date, terms.days);
    case 'business-days': {
      let due = date;
      for (let left = terms.days; left > 0; ) {
        due = addDays(due, 1);
        if (isBusinessDay(due, calendar)) left -= 1;
      }
      return due;
    }
    case 'day-of-next-month':
      return addDays(firstOfNextMonth(date), terms.day - 1);
    case 'end-of-next-month':
      return addDays(firstOfNextMonth(firstOfNextMonth(date)), -1);
  }
}

const firstOfNextMonth = (date: LocalDate): LocalDate =>
  `${addDays(`${date.slice(0, 7)}-01` as LocalDate, 31).slice(0, 7)}-01` as LocalDate;

/** Until when a discount can be taken; null where the terms give none. */
export const discountUntil = (date: LocalDate, terms: Terms | undefined): LocalDate | null =>
  terms?.by === 'days' && terms.discount !== undefined ? addDays(date, terms.discount.days) : null;

/** Reads terms as bills print them: "net 30", "2/10 net 30", "on receipt", "2 business days", "day 10 of next month". */
export function readTerms(text: string): Outcome<Terms> {
  const words = text.trim().toLowerCase().replace(/\s+/g, ' ');
  if (/^(?:due )?(?:up)?on receipt$|^cash$/.test(words)) return ok({ by: 'days', days: 0 });
  if (/^(?:the )?end of (?:the )?next month$/.test(words)) return ok({ by: 'end-of-next-month' });
  const nth = /^(?:the )?(?:day )?(\d{1,2})(?:st|nd|rd|th)? of (?:the )?next month$/.exec(words);
  if (nth !== null) return checked({ by: 'day-of-next-month', day: Number(nth[1]) });
  const business = /^(?:net )?(\d{1,3}) business days?$/.exec(words);
  if (business !== null) return checked({ by: 'business-days', days: Number(business[1]) });
  const net =
    /^(?:(\d{1,2}(?:\.\d{1,2})?) ?%?\/(\d{1,3})[, ]+)?(?:net|n\/?) ?(\d{1,3})(?: days?)?$|^(\d{1,3}) days?$/.exec(
      words,
    );
  if (net === null)
    return refuse(
      'not-terms',
      'Write terms like net 30, 2/10 net 30, on receipt, 2 business days or day 10 of next month.',
    );
  const [, percent, within, span, bare] = net;
  const discount =
    percent === undefined ? {} : { discount: { basisPoints: Math.round(Number(percent) * 100), days: Number(within) } };
  return checked({ by: 'days', days: Number(span ?? bare), ...discount });
}

function checked(terms: Terms): Outcome<Terms> {
  const read = termsSchema.safeParse(terms);
  return read.success
    ? ok(read.data)
    : refuse('not-terms', 'These terms are out of range. At most 365 days, or day 28.');
}

/** As a bill prints them. */
export function termsInWords(terms: Terms): string {
  switch (terms.by) {
    case 'days': {
      const { discount } = terms;
      if (terms.days === 0 && discount === undefined) return 'on receipt';
      const early = discount === undefined ? '' : `${discount.basisPoints / 100}/${discount.days} `;
      return `${early}net ${terms.days}`;
    }
    case 'business-days':
      return `${terms.days} business ${terms.days === 1 ? 'day' : 'days'}`;
    case 'day-of-next-month':
      return `day ${terms.day} of next month`;
    case 'end-of-next-month':
      return 'end of next month';
  }
}
