import { type Corrections, onlySome } from '../correction/corrections.ts';
import { DEFAULT_ESTIMATION } from '../retail/estimation.ts';
import type { Setup } from '../setup/setup.ts';

/**
 * The setup with the corrections that stand for figures of its own put in their place. What stays under `corrections`
 * applies to a single lot; so a setup that went through here once is the same after a second time.
 */
export function correctedSetup(setup: Setup): Setup {
  const { corrections } = setup;
  if (corrections === undefined) return setup;
  const { slopes, asking, days, canceled } = corrections;
  const { carrying } = setup;
  return {
    ...setup,
    corrections: onlySome(corrections, ['retailLevel', 'retailSpread', 'recon', 'win']),
    ...((slopes ?? asking) && {
      estimation: { ...(setup.estimation ?? DEFAULT_ESTIMATION), ...figuresOf(corrections) },
    }),
    // A fixed number of days is a decision, not an estimate: experience does not correct it.
    ...(days !== undefined &&
      carrying.daysToSell.kind === 'median' && {
        carrying: {
          ...carrying,
          daysToSell: { kind: 'median' as const, days: days.medianDays, countsFor: days.countsFor },
        },
      }),
    ...(canceled !== undefined && { undone: { ...setup.undone, chancePpm: canceled.chancePpm } }),
  };
}

function figuresOf({ slopes, asking }: Corrections) {
  return {
    ...(slopes !== undefined && {
      milesSlopePpm: slopes.milesSlopePpm,
      milesSlopeDoubtPpm: slopes.milesSlopeDoubtPpm,
      yearSlopePpm: slopes.yearSlopePpm,
      yearSlopeDoubtPpm: slopes.yearSlopeDoubtPpm,
    }),
    ...(asking !== undefined && { askingRatioPpm: asking.ratioPpm, askingRatioDoubtPpm: asking.doubtPpm }),
  };
}
