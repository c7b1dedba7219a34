import { type Cents, cents, roundedCents } from '../money/cents.ts';
import { PPM } from '../money/rate.ts';
import type { Comp } from './comp.ts';
import type { Estimation } from './estimation.ts';

/** The car that is being valued, as far as comparables are adjusted to it. */
export interface Subject {
  readonly miles?: number | undefined;
  readonly year?: number | undefined;
}

/** One step from a comparable's price towards this lot. */
export interface CompStep {
  readonly kind: 'asking' | 'difference' | 'miles' | 'year';
  /** Plain words with the rate, so that the step can be checked on a pocket calculator. */
  readonly label: string;
  /** What the amount before is multiplied by; absent where an amount is added. */
  readonly multiplier?: number;
  readonly change: Cents;
  /** The amount after this step, to the cent. Rounding is only for showing: the next step starts from the exact amount. */
  readonly result: Cents;
}

export interface AdjustedComp {
  readonly comp: Comp;
  /** Why it is set aside although it is not left out, in a sentence; absent while it can count. */
  readonly tooFar?: string;
  readonly steps: readonly CompStep[];
  /** What this comparable says the lot would sell for; its price and the changes of the steps add up to it. */
  readonly adjusted: Cents;
  /** Natural logarithm of the same before rounding, in cents. */
  readonly log: number;
  /** Tens of thousands of miles that it has more than the lot; 0 where either is unknown. */
  readonly moreMiles: number;
  /** Years that it is older than the lot; 0 where either is unknown. */
  readonly yearsOlder: number;
}

/** A car that miles and age alone make worth this many times more or less is another kind of car. */
const FARTHEST = 5;

/**
 * Brings a comparable's price to what this lot would have sold for: asking price to selling price, differences in
 * dollars, then mileage and age by multiplying with e^(slope × difference). One that is too far from the lot for that is
 * not adjusted, and says so.
 */
export function adjustedComp(comp: Comp, subject: Subject, settings: Estimation): AdjustedComp {
  const steps: CompStep[] = [];
  let amount: number = comp.price;
  let shown = comp.price;
  const take = (kind: CompStep['kind'], label: string, result: number, multiplier?: number) => {
    amount = Math.max(1, result);
    const rounded = roundedCents(amount);
    const step = { kind, label, change: cents(rounded - shown), result: rounded };
    steps.push(multiplier === undefined ? step : { ...step, multiplier });
    shown = rounded;
  };
  if (comp.kind === 'asking') {
    const ratio = settings.askingRatioPpm / PPM;
    take('asking', `Asking price to selling price, × ${plain(ratio)}`, amount * ratio, ratio);
  }
  for (const difference of comp.differences) take('difference', difference.label, amount + difference.cents);
  const moreMiles = difference(comp.miles, subject.miles) / 10_000;
  const yearsOlder = difference(subject.year, comp.year);
  const reach = (settings.milesSlopePpm / PPM) * moreMiles + (settings.yearSlopePpm / PPM) * yearsOlder;
  if (Math.abs(reach) > Math.log(FARTHEST)) {
    const tooFar = `Not counted: ${apart(moreMiles, yearsOlder)} is too far to compare. Check its year and miles, or leave it out.`;
    return { comp, tooFar, steps, adjusted: shown, log: Math.log(amount), moreMiles, yearsOlder };
  }
  if (moreMiles !== 0) {
    const multiplier = Math.exp((settings.milesSlopePpm / PPM) * moreMiles);
    const miles = Math.abs(moreMiles * 10_000).toLocaleString('en-US');
    const label = `${miles} miles ${moreMiles > 0 ? 'more' : 'fewer'}, ${percent(settings.milesSlopePpm)} for each 10,000, × ${plain(multiplier)}`;
    take('miles', label, amount * multiplier, multiplier);
  }
  if (yearsOlder !== 0) {
    const multiplier = Math.exp((settings.yearSlopePpm / PPM) * yearsOlder);
    const years = Math.abs(yearsOlder);
    const label = `${years} ${years === 1 ? 'year' : 'years'} ${yearsOlder > 0 ? 'older' : 'newer'}, ${percent(settings.yearSlopePpm)} for each, × ${plain(multiplier)}`;
    take('year', label, amount * multiplier, multiplier);
  }
  return { comp, steps, adjusted: shown, log: Math.log(amount), moreMiles, yearsOlder };
}

/** Whether it counts: nobody left it out, and it is near enough. */
export const counts = ({ comp, tooFar }: Pick<AdjustedComp, 'comp' | 'tooFar'>): boolean =>
  !comp.leftOut && tooFar === undefined;

/** "119 years older and 30,000 miles more than this car". */
function apart(moreMiles: number, yearsOlder: number): string {
  const years = Math.abs(yearsOlder);
  const parts = [
    years > 0 && `${years} ${years === 1 ? 'year' : 'years'} ${yearsOlder > 0 ? 'older' : 'newer'}`,
    moreMiles !== 0 &&
      `${Math.abs(moreMiles * 10_000).toLocaleString('en-US')} miles ${moreMiles > 0 ? 'more' : 'fewer'}`,
  ];
  return `${parts.filter(Boolean).join(' and ')} than this car`;
}

const difference = (one: number | undefined, other: number | undefined): number =>
  one === undefined || other === undefined ? 0 : one - other;

/** A multiplier with the digits that a check by hand needs. */
const plain = (multiplier: number): string => String(Number(multiplier.toFixed(5)));

const percent = (rate: number): string => `${Number((rate / 10_000).toFixed(3))}%`;
