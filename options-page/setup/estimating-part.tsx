import { ppm } from '../../src/domain/money/rate.ts';
import { DEFAULT_ESTIMATION, type Doubt, type Estimation } from '../../src/domain/retail/estimation.ts';
import { percentInWords } from '../../src/domain/setup/value-words.ts';
import { NumberInput } from '../../src/ui/inputs/number-input.tsx';
import { RateInput } from '../../src/ui/inputs/rate-input.tsx';
import { FaultsAt } from './faults-at.tsx';
import { PartFrame } from './part-frame.tsx';
import { useSetupEdit } from './setup-edit.ts';
import type { SetupPart } from './setup-parts.ts';

type RateKey = Exclude<keyof Estimation, 'carSpreadWeight' | 'doubt'>;

interface RateField<Key> {
  readonly key: Key;
  readonly label: string;
  readonly hint?: string;
}

const GROUPS: readonly { readonly legend: string; readonly fields: readonly RateField<RateKey>[] }[] = [
  {
    legend: 'From one car to another',
    fields: [
      { key: 'milesSlopePpm', label: '10,000 more miles take off' },
      { key: 'milesSlopeDoubtPpm', label: 'Miles, give or take' },
      { key: 'yearSlopePpm', label: 'A model year older takes off' },
      { key: 'yearSlopeDoubtPpm', label: 'Year, give or take' },
      { key: 'carSpreadPpm', label: 'Spread from car to car', hint: 'Two in three of a kind sell within it' },
    ],
  },
  {
    legend: 'Asking prices and your estimates',
    fields: [
      { key: 'askingRatioPpm', label: 'Sold at, % of asking price' },
      { key: 'askingRatioDoubtPpm', label: 'Asking, give or take' },
      { key: 'guessSpreadPpm', label: 'Spread of an estimate with no range' },
      { key: 'twinStretchPpm', label: 'Slower for each similar car in stock' },
    ],
  },
];

const STATEMENTS: readonly RateField<keyof Doubt>[] = [
  { key: 'statedPpm', label: 'Only stated' },
  { key: 'vinAgreesPpm', label: 'VIN agrees' },
  { key: 'seenPpm', label: 'Seen in a photo' },
  { key: 'confirmedPpm', label: 'Somebody looked' },
];

/** The assumptions behind a value and its doubt, each one the dealer's to change. */
export function EstimatingPart({ part }: { part: SetupPart }) {
  const { setup, change } = useSetupEdit();
  const estimation = setup.estimation ?? DEFAULT_ESTIMATION;
  const commit = (set: Partial<Estimation>, said = 'Saved.') => change({ estimation: { ...estimation, ...set } }, said);
  const changed = JSON.stringify(estimation) !== JSON.stringify(DEFAULT_ESTIMATION);
  return (
    <PartFrame
      part={part}
      intro="How retail is worked out from other cars, and how sure that is. These are starting assumptions, not published figures for your market. Leave them until your own results say otherwise."
    >
      {GROUPS.map(({ legend, fields }, index) => (
        <fieldset key={legend} class="stack">
          <legend>{legend}</legend>
          <div class="fields">
            {fields.map(({ key, label, hint }) => (
              <div key={key}>
                <RateInput
                  label={label}
                  value={estimation[key]}
                  most={key === 'askingRatioPpm' ? 150 : 100}
                  required
                  hint={[hint, startsAt(estimation[key], DEFAULT_ESTIMATION[key])].filter(Boolean).join('. ')}
                  onCommit={(value = ppm(0)) => commit({ [key]: value })}
                />
                <FaultsAt path={['estimation', key]} />
              </div>
            ))}
            {index === 0 && (
              <NumberInput
                label="That spread counts for"
                value={estimation.carSpreadWeight}
                least={1}
                most={1000}
                unit="cars"
                required
                hint="Until this many comparables say otherwise"
                onCommit={(carSpreadWeight) => carSpreadWeight !== undefined && commit({ carSpreadWeight })}
              />
            )}
          </div>
        </fieldset>
      ))}
      <fieldset class="stack">
        <legend>How often a statement in a listing is false</legend>
        <div class="fields">
          {STATEMENTS.map(({ key, label }) => (
            <RateInput
              key={key}
              label={label}
              value={estimation.doubt[key]}
              required
              hint={startsAt(estimation.doubt[key], DEFAULT_ESTIMATION.doubt[key])}
              onCommit={(value = ppm(0)) => commit({ doubt: { ...estimation.doubt, [key]: value } })}
            />
          ))}
        </div>
      </fieldset>
      {changed && (
        <p>
          <button type="button" onClick={() => commit(DEFAULT_ESTIMATION, 'Back to the starting values.')}>
            Back to the starting values
          </button>
        </p>
      )}
    </PartFrame>
  );
}

const startsAt = (value: number, first: number) =>
  value === first ? undefined : `Starting value ${percentInWords(first)}`;
