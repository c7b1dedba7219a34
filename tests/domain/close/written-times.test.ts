import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { readCloseTime } from '../../../src/domain/close/read-close-time.ts';
import type { CloseTime } from '../../../src/domain/time/close-time.ts';
import { type Instant, instant } from '../../../src/domain/time/instant.ts';
import { MINUTE } from '../../../src/domain/time/units.ts';
import { zone } from '../../../src/domain/time/zone.ts';
import { dayNamedIn } from './day-named-in.ts';

/** What a careful person makes of a text; written by somebody who had not read the code. */
interface Expected {
  readonly kind: 'certain' | 'question' | 'countdown' | 'past' | 'no';
  readonly instant?: string;
  readonly finest?: 'day' | 'hour' | 'minute';
  readonly readings?: readonly string[];
  readonly mustInclude?: readonly string[];
  /** Only a day or a part of one is written. */
  readonly spans?: readonly (readonly [string, string])[];
  readonly approx?: boolean;
  readonly alsoOk?: readonly Expected[];
}

interface WrittenTime {
  readonly id: string;
  readonly text: string;
  readonly now: string;
  readonly venueZone: string | null;
  readonly storeZone: string;
  readonly expect: Expected;
  readonly why: string;
}

const TEXTS: readonly WrittenTime[] = JSON.parse(
  readFileSync(new URL('../../fixtures/written-times.json', import.meta.url), 'utf8'),
);

const at = (text: string | undefined): Instant => instant(Date.parse(text ?? ''));
const FINENESS = ['day', 'hour', 'minute'] as const;

/** What was told: a fact, a question with its readings, or that it was not understood. */
type Told =
  | { readonly as: 'fact'; readonly close: CloseTime }
  | { readonly as: 'question'; readonly close: CloseTime; readonly readings: readonly Instant[] }
  | { readonly as: 'refused'; readonly message: string };

function told({ text, now, venueZone, storeZone }: WrittenTime): Told {
  const read = readCloseTime(text, {
    now: at(now),
    storeZone: zone(storeZone),
    ...(venueZone === null ? {} : { venueZone: zone(venueZone) }),
  });
  if (!read.ok) return { as: 'refused', message: read.message };
  const close = read.value;
  if (close.doubts.length === 0) return { as: 'fact', close };
  return { as: 'question', close, readings: [close.instant, ...close.otherwise] };
}

function meets(answer: Told, expected: Expected, { now, venueZone, storeZone }: WrittenTime): boolean {
  const isFact = answer.as === 'fact' && answer.close.instant === Date.parse(expected.instant ?? '');
  switch (expected.kind) {
    case 'certain':
      return isFact && answer.close.how !== 'countdown';
    case 'past':
      return isFact && answer.close.instant <= at(now);
    case 'countdown': {
      const finest = answer.as === 'fact' ? (answer.close.finest ?? 'minute') : 'minute';
      return isFact && FINENESS.indexOf(finest) <= FINENESS.indexOf(expected.finest ?? 'minute');
    }
    case 'no':
      return answer.as === 'refused';
    case 'question': {
      const must = (expected.mustInclude ?? expected.readings ?? []).map(at);
      if (must.length === 0) return answer.as === 'refused';
      if (expected.spans !== undefined && answer.as === 'refused')
        return expected.spans.every(([from]) => dayNamedIn(answer.message, at(from), zone(venueZone ?? storeZone)));
      if (answer.as !== 'question') return false;
      if (expected.approx === true)
        return (
          answer.close.doubts.includes('approximate') &&
          must.some((one) => answer.readings.some((reading) => Math.abs(reading - one) <= 30 * MINUTE))
        );
      return must.every((one) => answer.readings.includes(one)) && answer.readings.length <= must.length + 3;
    }
  }
}

test.each(TEXTS)('$id $text: $why', (written) => {
  const answer = told(written);
  const accepted = [written.expect, ...(written.expect.alsoOk ?? [])];
  expect(
    accepted.some((one) => meets(answer, one, written)),
    JSON.stringify({ answer, accepted }),
  ).toBe(true);
});

test('nothing that leaves a question open is told as a fact', () => {
  const silent = TEXTS.filter((written) => {
    const answer = told(written);
    const facts = [written.expect, ...(written.expect.alsoOk ?? [])].filter(({ kind }) => kind !== 'question');
    return answer.as === 'fact' && !facts.some((one) => answer.close.instant === Date.parse(one.instant ?? ''));
  });
  expect(silent.map(({ id, text }) => `${id} ${text}`)).toEqual([]);
});
