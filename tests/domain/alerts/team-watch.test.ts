import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { offersFor } from '../../../src/domain/alerts/offers-for.ts';
import { isCalledElsewhere, type TeamWatch } from '../../../src/domain/alerts/team-watch.ts';
import { rushCalendar } from '../../../src/domain/rush/rush-bands.ts';
import { rushSchema } from '../../../src/domain/setup/store.ts';
import { MINUTE } from '../../../src/domain/time/units.ts';
import { BOISE, bareRules, clockAt, type Invention, inventedLot, planFor } from './invented-lots.ts';

const team = (me: string, myRole: string, ...others: readonly [string, string][]): TeamWatch => ({
  me,
  myRole,
  others: others.map(([name, role]) => ({ name, role })),
});
const BUYER = team('the buyer', 'buyer', ['the manager', 'manager'], ['the bookkeeper', 'bookkeeper']);
const MANAGER = team('the manager', 'manager', ['the buyer', 'buyer'], ['the bookkeeper', 'bookkeeper']);
const BOOKKEEPER = team('the bookkeeper', 'bookkeeper', ['the manager', 'manager'], ['the buyer', 'buyer']);
const EVERYBODY = { buyer: BUYER, manager: MANAGER, bookkeeper: BOOKKEEPER };

/** A Saturday within the busy hours from ten to one, and a Tuesday. */
const BUSY = clockAt('2026-11-28', '12:00');
const CALM = clockAt('2026-12-01', '12:00');

/** Who is called so many minutes before the close, each by his own computer. */
function called(close: number, minutes: number, more: Invention = {}, who?: string) {
  const rules = bareRules();
  const rush = rushSchema.parse({ weekly: [{ weekday: 'sat', from: '10:00', to: '13:00', ...(who && { who }) }] });
  const calendar = rushCalendar(rush, BOISE, rules.nearMinutes);
  return Object.entries(EVERYBODY).flatMap(([name, watch]) => {
    const mine = more.handedTo === watch.me;
    const { handedTo, taken, ...rest } = more;
    const lot = inventedLot('a', close, { ...rest, ...(mine ? { mine } : { handedTo, taken }) });
    return planFor([lot], close - minutes * MINUTE, { team: watch, calendar }).due.length > 0 ? [name] : [];
  });
}

describe('until the last call', () => {
  test('in busy hours the managers are called where the plan names nobody, and else who is on duty', () => {
    expect(called(BUSY, 60)).toEqual(['manager']);
    expect(called(BUSY, 60, {}, 'The Buyer ')).toEqual(['buyer']);
    expect(called(BUSY, 60, {}, 'the buyer and the bookkeeper')).toEqual(['buyer', 'bookkeeper']);
  });
  test('in all other hours the buyers are called', () => expect(called(CALM, 60)).toEqual(['buyer']));
  test('who was handed the lot is called, whoever is on duty', () =>
    expect(called(BUSY, 60, { handedTo: 'the bookkeeper' })).toEqual(['bookkeeper']));
  test('everybody is called where none of those who come first is in the team', () => {
    expect(called(BUSY, 60, {}, 'the salesperson')).toEqual(['buyer', 'manager', 'bookkeeper']);
    // In another's hands a lot is called once, at the last call.
    expect(called(CALM, 15, { handedTo: 'the salesperson' })).toEqual(['buyer', 'manager', 'bookkeeper']);
  });
});

test('at the last call everybody is called, unless somebody said that he has it: then it is called at his computer alone', () => {
  expect(called(BUSY, 15)).toEqual(['buyer', 'manager', 'bookkeeper']);
  expect(called(BUSY, 15, { handedTo: 'the buyer' })).toEqual(['buyer', 'manager', 'bookkeeper']);
  expect(called(BUSY, 15, { handedTo: 'the buyer', taken: true })).toEqual(['buyer']);
});

test('how it ended is asked of whoever was handed the lot, else of everybody', () => {
  const rules = bareRules({ afterCloseMinutes: 5 });
  const asked = (watch: TeamWatch, more: Invention = {}) =>
    planFor([inventedLot('a', CALM, more)], CALM + 5 * MINUTE, { rules, team: watch }).due.length;
  expect([asked(MANAGER), asked(MANAGER, { handedTo: 'the buyer' }), asked(BUYER, { mine: true })]).toEqual([1, 0, 1]);
});

test('a look at the last call is planned where the first one was another’s', () => {
  const { due, next } = planFor([inventedLot('a', CALM)], CALM - 50 * MINUTE, { team: MANAGER });
  expect([due, next]).toEqual([[], CALM - 15 * MINUTE]);
});

test('what nobody has is answered first with “I have it”; who has it, or is alone, is offered what he always was', () => {
  const about = { now: CALM - 30 * MINUTE, people: [] };
  const lot = inventedLot('a', CALM);
  expect(offersFor(lot, true, { ...about, me: 'the buyer' })[0]).toEqual({ do: 'have-it', as: 'the buyer' });
  expect(offersFor({ ...lot, mine: true }, true, { ...about, me: 'the buyer' })).toEqual(offersFor(lot, true, about));
});

test('whatever is handed over, to whomever, and whoever is on duty: the last call reaches somebody who is in the team', () => {
  const names = ['the buyer', 'the manager', 'the bookkeeper', 'the salesperson', 'THE MANAGER'];
  const sometimes = fc.option(fc.constantFrom(...names), { nil: undefined });
  fc.assert(
    fc.property(sometimes, fc.boolean(), sometimes, fc.boolean(), (handedTo, taken, who, busy) => {
      const reached = Object.values(EVERYBODY).filter((watch) => {
        const mine = handedTo?.toLowerCase() === watch.me;
        const lot = inventedLot('a', CALM, mine ? { mine } : { handedTo, taken });
        return !isCalledElsewhere({ lot, last: true }, watch, { busy, who }, CALM - 15 * MINUTE);
      });
      expect(reached.length).toBeGreaterThan(0);
    }),
  );
});

test('in a gap of the plan the managers are called first, as where it names nobody', () => {
  const calendar = rushCalendar(
    rushSchema.parse({
      weekly: [
        { weekday: 'sat', from: '10:00', to: '11:00', who: 'the buyer' },
        { weekday: 'sat', from: '11:00', to: '14:00' },
      ],
    }),
    BOISE,
    30,
  );
  const due = (team: TeamWatch) => planFor([inventedLot('a', BUSY)], BUSY - 55 * MINUTE, { team, calendar }).due;
  expect([due(MANAGER).length, due(BUYER).length]).toEqual([1, 0]);
  expect(due(MANAGER)[0]?.title).toMatch(/^The store: /);
});
