import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import * as z from 'zod';
import { isCalledElsewhere } from '../../../src/domain/alerts/team-watch.ts';
import { MINUTE } from '../../../src/domain/time/units.ts';
import { clockAt, inventedLot } from './invented-lots.ts';

const names = z.array(z.string());
const caseSchema = z.strictObject({
  name: z.string(),
  people: z.array(z.strictObject({ name: z.string(), role: z.string(), out: z.boolean().optional() })),
  busy: z.boolean(),
  duty: z.string().optional(),
  handedTo: z.string().optional(),
  taken: z.boolean(),
  takenBy: z.string().optional(),
  outOfStep: names.default([]),
  step: z.enum(['first', 'last', 'after']),
  /** Null where careful people differ; then at least who must and who must not be called. */
  called: names.nullable(),
  mustBeCalled: names.default([]),
  mustNotBeCalled: names.default([]),
  why: z.string(),
});
const CLOSE = clockAt('2026-12-01', '12:00');
const NOW = { first: CLOSE - 30 * MINUTE, last: CLOSE - 10 * MINUTE, after: CLOSE + 5 * MINUTE };
const isSame = (one: string | undefined, other: string) => one?.trim().toLowerCase() === other.trim().toLowerCase();

/** Who is called, each by his own computer. */
function calledIn({ people, busy, duty, step, outOfStep, ...about }: z.infer<typeof caseSchema>): string[] {
  const team = people.filter(({ out }) => out !== true);
  const handedTo = about.takenBy ?? about.handedTo;
  return team.flatMap((me) => {
    const lot = inventedLot(
      'a',
      CLOSE,
      isSame(handedTo, me.name) ? { mine: true } : { handedTo, taken: about.taken || undefined },
    );
    const others = team.filter((one) => one !== me);
    const watch = outOfStep.includes(me.name) ? undefined : { me: me.name, myRole: me.role, others };
    const elsewhere = isCalledElsewhere({ lot, last: step === 'last' }, watch, { busy, who: duty }, NOW[step]);
    return elsewhere ? [] : [me.name];
  });
}

// Written by somebody who had not read the code: 21 of 24 were right at first sight.
test.each(z.array(caseSchema).parse(JSON.parse(readFileSync('tests/fixtures/team-calls.json', 'utf8'))))(
  'who is called: $name',
  (one) => {
    const called = calledIn(one);
    if (one.called !== null) expect(called.toSorted()).toEqual(one.called.toSorted());
    expect(called).toEqual(expect.arrayContaining(one.mustBeCalled));
    expect(called.filter((name) => one.mustNotBeCalled.includes(name))).toEqual([]);
  },
);
