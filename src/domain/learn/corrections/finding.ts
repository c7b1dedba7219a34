import { stockOf } from '../../carrying/stock-record.ts';
import type { CorrectionId, Corrections } from '../../correction/corrections.ts';
import { PPM, ppm } from '../../money/rate.ts';
import { DEFAULT_ESTIMATION } from '../../retail/estimation.ts';
import type { Setup } from '../../setup/setup.ts';
import { startOfDay } from '../../time/calendar-day.ts';
import type { Instant } from '../../time/instant.ts';
import { canceledRate } from './canceled-rate.ts';
import { type CompSlopes, compSlopes } from './comp-slopes.ts';
import { type DaysLearned, daysLearned } from './days-learned.ts';
import type { CorrectionEvidence } from './evidence.ts';
import type { Learned } from './learned.ts';
import { reconRatios } from './recon-ratio.ts';
import { retailLevel, retailSpread } from './retail-error.ts';
import { winHaircut } from './win-correction.ts';

/** One figure of a correction: what the evidence says, beside what counts without it. */
export interface Figure {
  readonly label: string;
  /** `times` an estimate, a `share` of something, a share taken `off`, or `days`. */
  readonly unit: 'times' | 'share' | 'off' | 'days';
  /** What counts while the correction is off. */
  readonly without: number;
  readonly learned: Learned;
  /** Whether there are cases enough to go by it. */
  readonly enough: boolean;
}

/** What the evidence says for one correction. */
export interface Finding {
  readonly id: CorrectionId;
  readonly figures: readonly Figure[];
  readonly cases: number;
  /** The least number of cases that it is shown for. */
  readonly least: number;
  readonly enough: boolean;
  /** More than chance, as far as that can be told, and not told better by another correction. */
  readonly clear: boolean;
  /** The correction that tells the same better. */
  readonly better?: CorrectionId;
  /** What would be switched on now; nothing while there is not enough. */
  readonly value: Corrections;
}

/** What findings are asked with. */
export interface FindingsAsk {
  readonly evidence: CorrectionEvidence;
  /** As it was given, with what is switched on in it. */
  readonly setup: Setup;
  readonly now: Instant;
}

/** Below these a figure is hidden: it would move with the next case. Wins count from the third, as the belief does most of the work. */
export const LEAST_CASES: Readonly<Record<CorrectionId, number>> = {
  slopes: 12,
  asking: 10,
  retailLevel: 5,
  retailSpread: 10,
  recon: 5,
  days: 5,
  canceled: 20,
  win: 3,
};

/** What the evidence known at `now` says for one correction, given the others that are on. */
export function findingOf(id: CorrectionId, ask: FindingsAsk): Finding {
  const least = LEAST_CASES[id];
  const figures = FIGURES[id](ask).map((figure) => ({ ...figure, enough: figure.learned.cases >= least }));
  const some = figures.filter(({ enough }) => enough);
  const cases = Math.max(0, ...figures.map(({ learned }) => learned.cases));
  const enough = id === 'slopes' ? some.length === figures.length : some.length > 0;
  const since = { since: ask.now, cases };
  const better = id === 'retailLevel' && enough && isCurse(ask) ? ('win' as const) : undefined;
  return {
    id,
    figures,
    cases,
    least,
    enough,
    clear: enough && better === undefined && some.some(({ learned }) => learned.clear),
    ...(better !== undefined && { better }),
    value: enough ? { [id]: { ...VALUES[id](some), ...since } } : {},
  };
}

/**
 * Whether what won cars missed goes with how cheap they were: then it is won cars that miss, not estimates as such, and
 * taking the whole average off every estimate would take off too much.
 */
const isCurse = ({ evidence, now, setup }: FindingsAsk): boolean =>
  winHaircut(evidence.wins({}), now, halfLife(setup)).byBargain;

type Plain = Omit<Figure, 'enough'>;

const one = (label: string, unit: Figure['unit'], without: number, learned: Learned): readonly Plain[] => [
  { label, unit, without, learned },
];

const FIGURES: Readonly<Record<CorrectionId, (ask: FindingsAsk) => readonly Plain[]>> = {
  slopes(ask) {
    const { milesSlopePpm, yearSlopePpm } = estimationOf(ask);
    const { miles, years } = slopesOf(ask);
    return [
      ...one('10,000 more miles', 'off', milesSlopePpm / PPM, miles),
      ...one('One year older', 'off', yearSlopePpm / PPM, years),
    ];
  },
  asking: (ask) =>
    one('Sold, of what was asked', 'share', estimationOf(ask).askingRatioPpm / PPM, slopesOf(ask).asking),
  retailLevel: ({ evidence, now, setup }) =>
    one('Sold, against what was expected', 'times', 1, retailLevel(evidence.retail, now, halfLife(setup))),
  retailSpread: ({ evidence, now, setup }) =>
    one('Range, against the one expected', 'times', 1, retailSpread(evidence.retail, now, halfLife(setup))),
  recon: ({ evidence, now, setup }) =>
    reconRatios(evidence.recon, now, halfLife(setup)).flatMap(({ label, ...learned }) =>
      one(label, 'times', 1, learned),
    ),
  days(ask) {
    const learned = daysOf(ask);
    return learned === undefined ? [] : one('Half sell within', 'days', learned.neutral, learned);
  },
  canceled: ({ evidence, now, setup }) => {
    const without = setup.undone.chancePpm / PPM;
    return one(
      'Canceled, of all wins',
      'share',
      without,
      canceledRate(evidence.purchases, without, now, halfLife(setup)),
    );
  },
  win: ({ evidence, now, setup }) =>
    one('Taken off before bidding', 'off', 0, winHaircut(evidence.wins(setup.corrections ?? {}), now, halfLife(setup))),
};

const VALUES: { readonly [Id in CorrectionId]: (figures: readonly Figure[]) => object } = {
  slopes: ([miles, years]) => ({
    milesSlopePpm: share(miles?.learned.value),
    milesSlopeDoubtPpm: share(doubtOf(miles)),
    yearSlopePpm: share(years?.learned.value),
    yearSlopeDoubtPpm: share(doubtOf(years)),
  }),
  asking: ([asking]) => ({ ratioPpm: between(asking?.learned.value, 0.5, 1.5), doubtPpm: share(doubtOf(asking)) }),
  retailLevel: ([level]) => ({ factorPpm: between(level?.learned.value, 0.2, 5) }),
  retailSpread: ([spread]) => ({ factorPpm: between(spread?.learned.value, 0.2, 5) }),
  recon: (figures) => ({
    lines: figures
      .slice(0, 200)
      .map(({ label, learned }) => ({ line: label, factorPpm: between(learned.value, 0.2, 5) })),
  }),
  days: ([figure]) => {
    const learned = figure?.learned as DaysLearned | undefined;
    return {
      medianDays: Math.min(3650, Math.max(1, Math.round((learned?.value ?? 1) * 10) / 10)),
      countsFor: Math.min(100_000, Math.max(1, Math.round((learned?.countsFor ?? 1) * 100) / 100)),
    };
  },
  canceled: ([rate]) => ({ chancePpm: share(rate?.learned.value) }),
  win: ([haircut]) => ({
    haircutPpm: Math.round(Math.min(0.5, Math.max(-0.5, haircut?.learned.value ?? 0)) * PPM),
  }),
};

const halfLife = ({ corrections }: Setup): number | undefined => corrections?.halfLifeDays;

/** What the setup says by itself, whatever is switched on. */
const estimationOf = ({ setup }: FindingsAsk) => setup.estimation ?? DEFAULT_ESTIMATION;

/** Three figures come from one fit; whoever asks for two of them gets it worked out once. */
const fits = new WeakMap<FindingsAsk, CompSlopes>();

function slopesOf(ask: FindingsAsk): CompSlopes {
  const fit = fits.get(ask) ?? compSlopes(ask.evidence.comps, estimationOf(ask), ask.now, halfLife(ask.setup));
  fits.set(ask, fit);
  return fit;
}

function daysOf({ evidence, now, setup }: FindingsAsk): DaysLearned | undefined {
  const { daysToSell } = setup.carrying;
  if (daysToSell.kind === 'fixed') return undefined;
  const asOf = setup.stock?.asOf;
  return daysLearned(
    evidence.bought,
    {
      medianDays: daysToSell.days,
      record: stockOf(setup),
      ...(asOf !== undefined && { recordedAt: startOfDay(asOf, setup.store.zone) }),
    },
    now,
    halfLife(setup),
  );
}

/** Half of a range that holds 19 of 20 is about two standard errors. */
const doubtOf = (figure: Figure | undefined): number =>
  figure === undefined ? 0 : (figure.learned.high - figure.learned.low) / 2 / 1.96;

const share = (value = 0) => ppm(Math.round(Math.min(1, Math.max(0, value)) * PPM));
const between = (value = 1, low: number, high: number) => ppm(Math.round(Math.min(high, Math.max(low, value)) * PPM));
