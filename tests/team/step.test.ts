import { describe, expect, test } from 'vitest';
import { instant } from '../../src/domain/time/instant.ts';
import { DAY, HOUR, MINUTE } from '../../src/domain/time/units.ts';
import { zoneSchema } from '../../src/domain/time/zone.ts';
import { isInStep, type Step, sayStep } from '../../src/team/step/step.ts';

const ZONE = zoneSchema.parse('America/Boise');
/** Saturday, 2:05 PM in Idaho. */
const NOW = instant(Date.UTC(2026, 10, 28, 21, 5));
const ago = (milliseconds: number) => instant(NOW - milliseconds);
const step = (some: Partial<Step>): Step => ({ inStepAt: NOW, notSent: 0, notSentSince: null, stopped: null, ...some });

describe('how a computer stands to its team', () => {
  test('is said in a few words, with the time', () => {
    const said = (some: Partial<Step>) => sayStep(step(some), ZONE, NOW);
    expect(said({})).toBe('In step, 2:05 PM');
    expect(said({ notSent: 3, notSentSince: ago(25 * MINUTE) })).toBe('3 entries not sent since 1:40 PM');
    expect(said({ notSent: 1, notSentSince: ago(DAY) })).toBe('1 entry not sent since Fri Nov 27, 2:05 PM');
    expect(said({ inStepAt: ago(HOUR) })).toBe('Not in step since 1:05 PM');
    expect(said({ stopped: 'The server did not answer.' })).toBe('Not in step since 2:05 PM');
    expect(said({ inStepAt: null })).toBe('Not in step yet');
  });

  test('counts as in step only shortly after everything was sent and fetched', () => {
    expect(isInStep(step({}), NOW)).toBe(true);
    expect(isInStep(step({ inStepAt: ago(6 * MINUTE) }), NOW)).toBe(false);
    expect(isInStep(step({ notSent: 1, notSentSince: NOW }), NOW)).toBe(false);
    expect(isInStep(step({ stopped: 'x' }), NOW)).toBe(false);
    expect(isInStep(step({ inStepAt: null }), NOW)).toBe(false);
  });

  test('does not count as in step by a time that lies ahead, which a wrong clock wrote', () => {
    expect(isInStep(step({ inStepAt: ago(-HOUR) }), NOW)).toBe(false);
  });
});
