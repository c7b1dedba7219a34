import { type Cents, cents, ZERO } from '../../src/domain/money/cents.ts';
import { formatMoney } from '../../src/domain/money/format-money.ts';
import { PPM, ppm } from '../../src/domain/money/rate.ts';
import { rateOf } from '../../src/domain/money/rounding.ts';
import type { ProfitRules } from '../../src/domain/setup/money-rules.ts';
import { MoneyInput } from '../../src/ui/inputs/money-input.tsx';
import { RateInput } from '../../src/ui/inputs/rate-input.tsx';
import { Ledger } from '../../src/ui/tables/ledger.tsx';
import { PartFrame } from './part-frame.tsx';
import { useSetupEdit } from './setup-edit.ts';
import type { SetupPart } from './setup-parts.ts';

const EXAMPLE = { retail: cents(2_000_000), cash: cents(500_000), days: 40 } as const;

/** The least profit that makes a deal worth doing, and the most risk of a loss. */
export function RulesPart({ part }: { part: SetupPart }) {
  const { setup, change } = useSetupEdit();
  const { rules } = setup;
  const commit = (set: Partial<ProfitRules>, said: string) => change({ rules: { ...rules, ...set } }, said);
  return (
    <PartFrame
      part={part}
      intro="A max bid is the most you can pay and still meet these rules. Of the three profits, the largest one for the car counts."
      caution="Estimates can be wrong and money can be lost. Headroom advises; you decide and bid."
    >
      <div class="fields">
        <MoneyInput
          label="Minimum profit per car"
          value={rules.dollarsCents}
          required
          hint="After every cost"
          onCommit={(dollarsCents = ZERO) => commit({ dollarsCents }, `Minimum profit: ${formatMoney(dollarsCents)}.`)}
        />
        <RateInput
          label="Minimum % of retail"
          value={rules.shareOfRetailPpm}
          most={1000}
          required
          hint="0 turns this rule off"
          onCommit={(shareOfRetailPpm = ppm(0)) => commit({ shareOfRetailPpm }, 'Minimum % of retail saved.')}
        />
        <RateInput
          label="Minimum daily return on own cash"
          value={rules.perCashDayPpm}
          most={1000}
          required
          hint="0.1% is $1 a day on $1,000. 0 turns this rule off"
          onCommit={(perCashDayPpm = ppm(0)) => commit({ perCashDayPpm }, 'Minimum daily return saved.')}
        />
        <RateInput
          label="Highest chance of a loss"
          value={rules.lossChancePpm}
          required
          hint={chanceInWords(rules.lossChancePpm)}
          onCommit={(lossChancePpm = ppm(PPM)) => commit({ lossChancePpm }, 'Highest chance of a loss saved.')}
        />
      </div>
      <Example rules={rules} />
    </PartFrame>
  );
}

function chanceInWords(chance: number): string {
  if (chance === 0) return 'No chance of a loss is accepted, so hardly any bid passes';
  if (chance === PPM) return 'Any chance of a loss is accepted';
  return `About 1 deal in ${Number((PPM / chance).toFixed(1))}`;
}

/** Which of the three binds on a round example, so that their size can be judged. */
function Example({ rules }: { rules: ProfitRules }) {
  const lines: readonly (readonly [string, Cents])[] = [
    ['On every car', rules.dollarsCents],
    [`Of ${formatMoney(EXAMPLE.retail)} retail`, rateOf(EXAMPLE.retail, rules.shareOfRetailPpm)],
    [
      `On ${formatMoney(EXAMPLE.cash)} of own cash for ${EXAMPLE.days} days`,
      cents(Math.round((EXAMPLE.cash * rules.perCashDayPpm * EXAMPLE.days) / PPM)),
    ],
  ];
  const most = Math.max(...lines.map(([, amount]) => amount));
  return (
    <Ledger
      class="setup-table"
      caption="What each rule asks of one example car"
      captionClass="small quiet"
      rows={lines}
      rowKey={([label]) => label}
      columns={[
        { label: '', heads: true, cell: ([label]) => label },
        { label: '', number: true, cell: ([, amount]) => formatMoney(amount) },
        { label: '', cell: ([, amount]) => amount === most && amount > 0 && <span class="strong">counts</span> },
      ]}
    />
  );
}
