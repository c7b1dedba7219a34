import type { CorrectionId, Corrections } from '../../../domain/correction/corrections.ts';
import type { Figure, Finding } from '../../../domain/learn/corrections/finding.ts';
import { PPM } from '../../../domain/money/rate.ts';

/** What stands on the screen for one correction. */
interface CorrectionText {
  readonly title: string;
  /** What it puts right, in a sentence. */
  readonly what: string;
  /** What its cases are, in the plural and in the singular. */
  readonly cases: readonly [string, string];
  /** What to record so that there are some. */
  readonly record: string;
}

export const CORRECTION_TEXTS: Readonly<Record<CorrectionId, CorrectionText>> = {
  win: {
    title: 'Cars that you win',
    what: 'You win most often what you rated too high. This takes off what won cars miss at the price where you would just win.',
    cases: ['cars won and sold', 'car won and sold'],
    record: 'Record the sale of each won car in its folder under Books.',
  },
  retailLevel: {
    title: 'Retail',
    what: 'Moves every retail estimate by what your sold cars brought on average, more or less than expected. One kind of car may be behind it: look under “By venue, car and person” first.',
    cases: ['cars sold at retail', 'car sold at retail'],
    record: 'Record the sale of each won car in its folder under Books.',
  },
  retailSpread: {
    title: 'Spread of retail',
    what: 'Widens or narrows every retail range to how far apart your sold cars really came out. It changes the chance of a loss.',
    cases: ['cars sold at retail', 'car sold at retail'],
    record: 'Record the sale of each won car in its folder under Books.',
  },
  slopes: {
    title: 'Miles and age',
    what: 'What 10,000 miles and a year take off, from all comparables that you entered.',
    cases: ['comparables', 'comparable'],
    record: 'Enter two or more comparables for a lot, with miles and year.',
  },
  asking: {
    title: 'Asking prices',
    what: 'What cars sell for, of what is asked for them, from lots with both kinds of comparables.',
    cases: ['comparables', 'comparable'],
    record: 'Enter comparables that sold beside comparables that are asked for, with miles and year.',
  },
  recon: {
    title: 'Recon',
    what: 'What each recon line was billed, of what you estimated. Lines are told apart by their names.',
    cases: ['bills of one line', 'bill of one line'],
    record: 'Record recon bills in the folders under Books, each against its line.',
  },
  days: {
    title: 'Days to sell',
    what: 'How long your own won cars took, those that still stand counted too. It changes interest and lot costs.',
    cases: ['won cars sold', 'won car sold'],
    record: 'Record the sale of each won car in its folder under Books.',
  },
  canceled: {
    title: 'Canceled sales',
    what: 'How many of your wins were canceled. A win counts once it is sold, or after 45 days.',
    cases: ['wins', 'win'],
    record: 'Record each result, and close each dispute with how it ended.',
  },
};

/** The order in which they stand on the screen: what moves bids most comes first. */
export const SHOWN_ORDER: readonly CorrectionId[] = [
  'win',
  'retailLevel',
  'retailSpread',
  'recon',
  'days',
  'slopes',
  'asking',
  'canceled',
];

const number = (value: number, digits: number): string =>
  value
    .toLocaleString('en-US', { maximumFractionDigits: digits, minimumFractionDigits: digits })
    // A true minus, and none before a figure that rounds to nothing.
    .replace(/^-(0(\.0+)?$)?/, (_, nothing: string | undefined) => nothing ?? '−');

/** A value of a figure with its unit: "2.9%", "+30%" for 1.3 times, "46 days". */
export function figureWords(unit: Figure['unit'], value: number): string {
  if (unit === 'days') return `${number(value, 0)} days`;
  if (unit === 'times') return `${value >= 1.0005 ? '+' : ''}${number((value - 1) * 100, 1)}%`;
  return `${number(value * 100, 1)}%`;
}

/** "−6.1% to +2.3%". */
export function rangeWords({ unit, learned: { low, high } }: Pick<Figure, 'unit' | 'learned'>): string {
  const from = figureWords(unit, low).replace(/ days$/, '');
  return `${from} to ${figureWords(unit, high)}`;
}

/** "61 cars won and sold." */
export function casesWords(id: CorrectionId, count: number): string {
  const [many, one] = CORRECTION_TEXTS[id].cases;
  return `${count.toLocaleString('en-US')} ${count === 1 ? one : many}`;
}

/** How sure it is, in a sentence. */
export function sureWords({ clear, better, enough }: Finding): string {
  if (!enough) return '';
  if (better === 'win')
    return 'The cars you got cheapest missed most, so it is won cars that miss, not estimates as such. “Cars that you win” tells that better.';
  return clear ? 'This is more than chance.' : 'This can still be chance.';
}

/** What a switched-on correction stands at, figure by figure, in the units of its finding. */
export function switchedValues(
  id: CorrectionId,
  on: Corrections,
): readonly (readonly [label: string, value: number])[] {
  const { slopes, asking, retailLevel, retailSpread, recon, days, canceled, win } = on;
  const one = (value: number | undefined, label = ''): readonly (readonly [string, number])[] =>
    value === undefined ? [] : [[label, value]];
  switch (id) {
    case 'slopes':
      return [
        ...one(slopes && slopes.milesSlopePpm / PPM, '10,000 more miles'),
        ...one(slopes && slopes.yearSlopePpm / PPM, 'One year older'),
      ];
    case 'asking':
      return one(asking && asking.ratioPpm / PPM);
    case 'retailLevel':
      return one(retailLevel && retailLevel.factorPpm / PPM);
    case 'retailSpread':
      return one(retailSpread && retailSpread.factorPpm / PPM);
    case 'recon':
      return (recon?.lines ?? []).map(({ line, factorPpm }) => [line, factorPpm / PPM]);
    case 'days':
      return one(days?.medianDays);
    case 'canceled':
      return one(canceled && canceled.chancePpm / PPM);
    case 'win':
      return one(win && win.haircutPpm / PPM);
  }
}

/**
 * By how much a switched-on correction has moved since, in a sentence; undefined while it stands where it was put. The max
 * bids go by the value that was switched on until somebody takes the new one.
 */
export function movedWords({ id, figures }: Finding, on: Corrections): string | undefined {
  const moves = switchedValues(id, on).flatMap(([label, was]) => {
    const figure = figures.find((one) => label === '' || one.label === label);
    if (figure === undefined || !figure.enough) return [];
    const [then, now] = [figureWords(figure.unit, was), figureWords(figure.unit, figure.learned.value)];
    return then === now ? [] : [`${label === '' ? '' : `${label}: `}${then} then, ${now} now`];
  });
  return moves.length === 0 ? undefined : `It has moved since: ${moves.join('; ')}.`;
}
