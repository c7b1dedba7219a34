import type { AdjustedComp, Subject } from './adjusted-comp.ts';

/** Something to keep in mind about a retail figure; none of it is in the arithmetic. */
export interface RetailHint {
  readonly kind: 'mileage-mark' | 'long-listed' | 'not-adjusted';
  /** The comparable it is about; absent when it is about the lot. */
  readonly index?: number;
  readonly message: string;
}

/**
 * @param horizonDays the day on which the dealer himself would wholesale a car that has not sold
 */
export function retailHints(
  subject: Subject,
  comps: readonly AdjustedComp[],
  horizonDays: number,
): readonly RetailHint[] {
  return [
    ...mileageMark(subject.miles),
    ...comps.flatMap(({ comp }, index): readonly RetailHint[] => [
      ...(comp.kind === 'asking' && (comp.daysListed ?? 0) >= horizonDays
        ? [{ kind: 'long-listed' as const, index, message: longListed(comp.daysListed ?? 0) }]
        : []),
      ...notAdjusted(subject, comp).map((message) => ({ kind: 'not-adjusted' as const, index, message })),
    ]),
  ];
}

/** How near to a mark counts as "just" under or over it. */
const NEAR_MARK = 500;

/**
 * Wholesale prices were seen to fall by $150 to $200 at each 10,000-mile mark beyond the steady slope (Lacetera, Pope &
 * Sydnor 2012, American Economic Review 102:2206–2236, 22 million sales).
 */
function mileageMark(miles: number | undefined): readonly RetailHint[] {
  if (miles === undefined) return [];
  const mark = Math.round(miles / 10_000) * 10_000;
  if (mark === 0 || Math.abs(miles - mark) > NEAR_MARK) return [];
  const side = miles < mark ? 'just under' : 'at or just over';
  const message = `${number(miles)} miles is ${side} the ${number(mark)} mark, where wholesale prices were seen to drop by $150 to $200. Compare with cars on the same side of it.`;
  return [{ kind: 'mileage-mark', message }];
}

const longListed = (days: number): string =>
  `Asked for ${number(days)} days without selling: its price is probably too high to count.`;

function notAdjusted(subject: Subject, comp: { miles?: number | undefined; year?: number | undefined }): string[] {
  const missing = (['miles', 'year'] as const).filter((key) => subject[key] !== undefined && comp[key] === undefined);
  return missing.map(
    (key) => `Its ${key === 'miles' ? 'mileage' : 'year'} is not known, so it is not adjusted for it.`,
  );
}

const number = (value: number): string => value.toLocaleString('en-US');
