import { type Cents, ZERO } from '../../src/domain/money/cents.ts';
import { formatMoney } from '../../src/domain/money/format-money.ts';
import { ppm } from '../../src/domain/money/rate.ts';
import { mulDivRound } from '../../src/domain/money/rounding.ts';
import type { StandingCosts, UndoneRule } from '../../src/domain/setup/money-rules.ts';
import { MoneyInput } from '../../src/ui/inputs/money-input.tsx';
import { RateInput } from '../../src/ui/inputs/rate-input.tsx';
import { PartFrame } from './part-frame.tsx';
import { useSetupEdit } from './setup-edit.ts';
import type { SetupPart } from './setup-parts.ts';

const STANDING = [
  { key: 'packCents', label: 'Pack', hint: 'Added to every car’s cost' },
  { key: 'overheadCents', label: 'Overhead per car', hint: 'Rent, wages and the rest, per car' },
  { key: 'sellingCents', label: 'Cost of selling', hint: 'Commission, advertising, delivery' },
  { key: 'reconCents', label: 'Recon, when nothing is listed', hint: 'Used only while a lot has no recon lines' },
] as const satisfies readonly { key: keyof StandingCosts; label: string; hint: string }[];

/** The costs of every car, and what a canceled sale costs. */
export function CostsPart({ part }: { part: SetupPart }) {
  const { setup, change } = useSetupEdit();
  const { costs, undone } = setup;
  const commitUndone = (set: Partial<UndoneRule>, said: string) => change({ undone: { ...undone, ...set } }, said);
  return (
    <PartFrame
      part={part}
      intro="These come off every car’s retail before its max bid. Enter a single lot’s extra costs on the lot."
    >
      <fieldset class="stack">
        <legend>On every car</legend>
        <div class="fields">
          {STANDING.map(({ key, label, hint }) => (
            <MoneyInput
              key={key}
              label={label}
              hint={hint}
              value={costs[key]}
              required
              onCommit={(amount = ZERO) =>
                change({ costs: { ...costs, [key]: amount } }, `${label}: ${formatMoney(amount)}.`)
              }
            />
          ))}
        </div>
      </fieldset>
      <fieldset class="stack">
        <legend>When a sale is canceled</legend>
        <p class="quiet setup-prose">
          Some cars go back after a dispute, and not all the money comes back. 0% leaves this out.
        </p>
        <div class="fields">
          <RateInput
            label="How often"
            value={undone.chancePpm}
            required
            hint="Of the cars you win"
            onCommit={(chancePpm = ppm(0)) => commitUndone({ chancePpm }, 'Saved.')}
          />
          <MoneyInput
            label="Lost each time"
            value={undone.lostCents}
            required
            hint="Fees kept, transport both ways, days lost"
            onCommit={(lostCents = ZERO) => commitUndone({ lostCents }, `Lost each time: ${formatMoney(lostCents)}.`)}
          />
          <RateInput
            label="Plus, % of the hammer price"
            value={undone.lostRatePpm}
            most={1000}
            required
            onCommit={(lostRatePpm = ppm(0)) => commitUndone({ lostRatePpm }, 'Saved.')}
          />
        </div>
        <p class="small">{averageLoss(undone)}</p>
      </fieldset>
    </PartFrame>
  );
}

function averageLoss({ chancePpm, lostCents, lostRatePpm }: UndoneRule): string {
  if (chancePpm === 0) return 'Nothing is counted for this now.';
  const each = lostCents + mulDivRound(1_000_000, lostRatePpm, 1_000_000, 'half-up');
  // Both amounts come from the setup's own limits, far inside what cents can hold.
  const average = mulDivRound(each, chancePpm, 1_000_000, 'half-up') as Cents;
  return `On a hammer price of $10,000 this takes ${formatMoney(average)} off every max bid.`;
}
