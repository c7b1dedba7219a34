import type { Instant } from '../../domain/time/instant.ts';
import { MINUTE } from '../../domain/time/units.ts';
import { type Happening, type HappeningKind, type HappeningOf, rowOf } from '../../journal/happening.ts';
import { AFTER_SALE_WORDS } from '../../journal/happenings/after-sale-words.ts';
import { ATTACHMENTS_WORDS } from '../../journal/happenings/attachments-words.ts';
import { BOOKS_WORDS } from '../../journal/happenings/books-words.ts';
import { CLOCK_WORDS } from '../../journal/happenings/clock-words.ts';
import { HOUSEKEEPING_WORDS } from '../../journal/happenings/housekeeping-words.ts';
import { PLAN_WORDS } from '../../journal/happenings/plan-words.ts';
import { SALE_WORDS } from '../../journal/happenings/sale-words.ts';
import { WATCHING_WORDS } from '../../journal/happenings/watching-words.ts';

const WORDS: { readonly [Kind in HappeningKind]: (happening: HappeningOf<Kind>) => string } = {
  ...AFTER_SALE_WORDS,
  ...ATTACHMENTS_WORDS,
  ...BOOKS_WORDS,
  ...CLOCK_WORDS,
  ...HOUSEKEEPING_WORDS,
  ...PLAN_WORDS,
  ...SALE_WORDS,
  ...WATCHING_WORDS,
};

/** One entry of a lot's life in plain words. Text from pages and people is in it as it came: show it as text only. */
export function sayHappening(happening: Happening): string {
  // The words of a kind take that kind only, and they are looked up by it.
  return (WORDS[happening.kind] as (happening: Happening) => string)(happening);
}

/** An entry made this much later than the act says so; in milliseconds. */
const LATER = MINUTE;

/**
 * When it was done or seen, where that was not the moment in which it was written down; null otherwise. Both matter: the
 * first is what the writer says, the second is what the journal shows.
 */
export function doneAt(happening: Happening, writtenAt: Instant): Instant | null {
  const at = rowOf(happening).doneAt?.(happening);
  return at !== undefined && Math.abs(at - writtenAt) > LATER ? at : null;
}
