import * as z from 'zod/mini';
import type { Closing, Ending } from '../../src/domain/market/closing.ts';
import { closingWeight } from '../../src/domain/market/market.ts';
import type { MarketGroup } from '../../src/domain/market/market-group.ts';
import { type GroupFacts, marketGroups } from '../../src/domain/market/market-groups.ts';
import { cents, centsSchema, positiveCentsSchema } from '../../src/domain/money/cents.ts';
import { formatMoney } from '../../src/domain/money/format-money.ts';
import { parseMoney } from '../../src/domain/money/parse-money.ts';
import { type Outcome, ok, refuse } from '../../src/domain/outcome.ts';
import type { PlanChoice } from '../../src/domain/plan/plan-lot.ts';
import type { Purse } from '../../src/domain/plan/purse.ts';
import { faultSentence, setupFaults } from '../../src/domain/setup/setup-faults.ts';
import { addDays, startOfDay } from '../../src/domain/time/calendar-day.ts';
import { type Instant, instant } from '../../src/domain/time/instant.ts';
import { localDateSchema } from '../../src/domain/time/local-date.ts';
import type { Zone } from '../../src/domain/time/zone.ts';

const aboveZero = positiveCentsSchema.check(z.gte(1));
const text = z._default(z.string().check(z.maxLength(200)), '');

const closingSchema = z.strictObject({
  venueId: text,
  titleId: text,
  make: text,
  model: text,
  seller: text,
  sealed: z._default(z.boolean(), false),
  at: z.optional(
    z.string().check(z.refine((value) => !Number.isNaN(Date.parse(value)), { error: 'is no date and time' })),
  ),
  zeroProfitCents: aboveZero,
  stepCents: aboveZero,
  bidCents: z.optional(aboveZero),
  ended: z.enum(['won', 'unopposed', 'lost', 'not-sold']),
  priceCents: z.optional(aboveZero),
});

const purseFileSchema = z.strictObject({
  cashCents: positiveCentsSchema,
  lineCents: z.optional(centsSchema),
  places: z.optional(z.int().check(z.gte(0), z.lte(10_000))),
  until: z.optional(localDateSchema),
  moves: z._default(
    z.array(
      z.strictObject({
        date: localDateSchema,
        cents: centsSchema,
        places: z.optional(z.int().check(z.gte(0), z.lte(1_000))),
        what: text,
      }),
    ),
    [],
  ),
  reactionMinutes: z._default(z.number().check(z.gte(0), z.lte(600)), 3),
  overspendPpm: z._default(z.int().check(z.gte(0), z.lte(250_000)), 0),
  choices: z._default(z.record(z.string(), z.enum(['pinned', 'skipped', 'plan-ignored'])), {}),
  closings: z._default(z.array(closingSchema), []),
});

/** A purse file, read. */
export interface PurseFile {
  readonly purse: Purse;
  readonly choices: ReadonlyMap<string, PlanChoice>;
  readonly closings: readonly Closing[];
  /** What was read as another thing than it is written, a sentence each. */
  readonly readAs: readonly string[];
  /** The group of a lot, as those closings divide them. */
  readonly groupOf: (facts: GroupFacts) => MarketGroup;
}

/**
 * Reads a purse file; with a single fault nothing is taken from it.
 * @param weekendFrom closings from then on are this weekend's; one without a time is of just before
 * @returns one sentence for each fault otherwise, each on a line of its own
 */
export function readPurse(content: string, zone: Zone, weekendFrom: Instant): Outcome<PurseFile> {
  let file: unknown;
  try {
    file = JSON.parse(content.replace(/^\uFEFF/, ''));
  } catch (error) {
    const why = error instanceof Error ? error.message : String(error);
    return refuse('not-json', `It is not valid JSON: ${why}. Check the commas, quotes and brackets there.`);
  }
  if (typeof file !== 'object' || file === null || Array.isArray(file)) {
    return refuse('no-purse', 'It does not hold a purse. Write an object in braces, with at least "cashCents".');
  }
  const readAs: string[] = [];
  const known = purseFileSchema.safeParse(dollarsRead(file, readAs));
  if (!known.success) {
    const faults = setupFaults(known.error.issues.slice(0, 50), file).map((fault) => `- ${faultSentence(fault)}`);
    return refuse('faults', `\n${faults.join('\n')}`);
  }
  const { cashCents, lineCents, places, until, moves, reactionMinutes, overspendPpm, choices, closings } = known.data;
  return ok({
    purse: {
      cash: cashCents,
      ...(lineCents !== undefined && { line: { free: lineCents } }),
      ...(places !== undefined && { places }),
      flows: moves.map(({ date, cents: amount, places: freed, what }) => ({
        // What comes in may come late in the day; what goes out may be asked for early.
        at: startOfDay(amount < 0 ? date : addDays(date, 1), zone),
        cents: amount,
        ...(freed !== undefined && { places: freed }),
        what,
      })),
      ...(until !== undefined && { until: instant(startOfDay(addDays(until, 1), zone) - 1) }),
      reaction: Math.round(reactionMinutes * 60_000),
      overChance: overspendPpm / 1_000_000,
    },
    choices: new Map(Object.entries(choices)),
    readAs,
    ...grouped(closings, weekendFrom),
  });
}

/**
 * The same file with the amounts in whole cents that are written as dollars, with their sign: "$30,000.00". A figure in quotes alone
 * could be either, and is refused.
 */
function dollarsRead(file: unknown, readAs: string[], path = ''): unknown {
  if (Array.isArray(file)) return file.map((one, i) => dollarsRead(one, readAs, `${path}[${i}]`));
  if (typeof file !== 'object' || file === null) return file;
  return Object.fromEntries(
    Object.entries(file).map(([key, value]): [string, unknown] => {
      const where = path === '' ? key : `${path}.${key}`;
      const money =
        typeof value === 'string' && /cents$/i.test(key) && value.includes('$') ? parseMoney(value) : undefined;
      if (!money?.ok) return [key, dollarsRead(value, readAs, where)];
      readAs.push(`Purse, ${where}: “${value}” is read as ${formatMoney(money.value)}.`);
      return [key, money.value];
    }),
  );
}

function grouped(
  given: readonly z.infer<typeof closingSchema>[],
  weekendFrom: Instant,
): Pick<PurseFile, 'closings' | 'groupOf'> {
  const read = given.map((closing) => {
    const at = closing.at === undefined ? instant(weekendFrom - 1) : instant(Date.parse(closing.at));
    const { titleId, venueId, make, model, seller } = closing;
    const facts: GroupFacts = { titleId, venueId, make, model, seller, ...(closing.sealed && { sealed: {} }) };
    return { closing, at, facts, weight: closingWeight(at, weekendFrom) };
  });
  const groupOf = marketGroups(read);
  const closings = read.map(
    ({ closing, at, facts }): Closing => ({
      group: groupOf(facts),
      at,
      zeroProfit: closing.zeroProfitCents,
      step: closing.stepCents,
      ...(closing.bidCents !== undefined && { bid: closing.bidCents }),
      ...(closing.sealed && { sealed: true }),
      ending: endingOf(closing),
    }),
  );
  return { closings, groupOf };
}

function endingOf({ ended, priceCents, bidCents }: z.infer<typeof closingSchema>): Ending {
  const price = priceCents ?? bidCents;
  if (ended === 'not-sold') return { was: 'no-sale', ...(priceCents !== undefined && { high: priceCents }) };
  if (ended === 'lost') return priceCents === undefined ? { was: 'lost-unknown' } : { was: 'lost', price: priceCents };
  // Of a win without its price only this is known: no rival went past our bid.
  const unopposed = ended === 'unopposed' || priceCents === undefined;
  return { was: 'won', price: price ?? cents(0), ...(unopposed && { unopposed }) };
}
