import type { Setup } from './setup.ts';
import { STARTING_TITLES } from './starting-titles.ts';
import { type Unlikely, type Usual, unlikely } from './unlikely.ts';
import { USUAL } from './usual-figures.ts';
import type { Venue } from './venue.ts';

/** Odd figures of the money rules, of costs, of a canceled sale, of holding and of estimating. */
export const figureCautions: {
  readonly [Section in 'rules' | 'costs' | 'undone' | 'carrying' | 'estimation']: (setup: Setup) => readonly Unlikely[];
} = {
  rules: ({ rules }) => each(rules, USUAL.rules),
  costs: ({ costs }) => each(costs, USUAL.costs),
  undone: ({ undone }) => each(undone, USUAL.undone),
  carrying: ({ carrying }) => [...each(carrying, USUAL.carrying), ...daysCautions(carrying), ...lineCautions(carrying)],
  estimation: ({ estimation }) => each(estimation ?? {}, USUAL.estimation),
};

/** Those fields of a section for which something is usual. */
function each(section: object, usual: Readonly<Record<string, Usual>>): readonly Unlikely[] {
  return Object.entries(usual).flatMap(([key, range]) => {
    const value: unknown = Reflect.get(section, key);
    return typeof value === 'number' ? unlikely(key, value, range) : [];
  });
}

function lineCautions({ floorPlan }: Setup['carrying']): readonly Unlikely[] {
  if (floorPlan === undefined) return [];
  const shares = floorPlan.curtailments.flatMap(({ day, sharePpm }) =>
    unlikely('sharePpm', sharePpm, USUAL.floorPlan.sharePpm, `The curtailment on day ${day}`),
  );
  return [...each(floorPlan, USUAL.floorPlan), ...shares];
}

function daysCautions({ daysToSell, horizonDays }: Setup['carrying']): readonly Unlikely[] {
  const { days, kind } = daysToSell;
  const odd = unlikely('days', days, USUAL.daysToSell, 'Days to sell a car');
  if (kind === 'fixed' || days < horizonDays) return odd;
  return [
    ...odd,
    {
      message: `Half of the cars sell within ${days} days, but an unsold car is wholesaled on day ${horizonDays}. Check both.`,
    },
  ];
}

/** Odd figures of a venue: its increments and the way home. */
export function venueFigureCautions({ increments, transport }: Venue): readonly Unlikely[] {
  const last = increments.at(-1);
  return [
    ...increments.flatMap(({ stepCents }) => unlikely('stepCents', stepCents, USUAL.step)),
    ...(last === undefined ? [] : unlikely('fromCents', last.fromCents, USUAL.lastStepFrom, LAST_STEP)),
    ...(transport.kind === 'flat'
      ? unlikely('cents', transport.cents, USUAL.transport.cents, 'Transport')
      : [
          ...unlikely('centsPerMile', transport.centsPerMile, USUAL.transport.centsPerMile, 'Transport a mile'),
          ...unlikely(
            'minimumCents',
            transport.minimumCents,
            USUAL.transport.minimumCents,
            'The minimum for transport',
          ),
        ]),
  ];
}

const LAST_STEP = 'The price from which the last bid increment holds';

/** A title that brings next to nothing; a title of the starting setup may say so. */
export function titleCautions({ id, keepsPpm }: Setup['titles'][number]): readonly Unlikely[] {
  const asStarted = STARTING_TITLES.some((title) => title.id === id && title.keepsPpm === keepsPpm);
  return asStarted ? [] : unlikely('keepsPpm', keepsPpm, USUAL.title.keepsPpm);
}
