import type { Carrying } from '../../src/domain/carrying/carrying-rules.ts';
import { percentInWords } from '../../src/domain/setup/value-words.ts';
import { MoneyInput } from '../../src/ui/inputs/money-input.tsx';
import { RateInput } from '../../src/ui/inputs/rate-input.tsx';
import type { PartProps } from './part-props.ts';

/** What makes a deal worth doing, and what is assumed about holding a car. */
export function FirstRule({ draft, put, carrying }: PartProps & { readonly carrying: Carrying }) {
  return (
    <fieldset class="stack">
      <legend>Your rule</legend>
      <div class="fields">
        <MoneyInput
          label="Minimum profit per car"
          value={draft.profit}
          required
          hint="The least you would do a deal for"
          onCommit={(profit) => profit !== undefined && put({ profit })}
        />
        <RateInput
          label="Highest chance of a loss"
          value={draft.lossChance}
          required
          hint="100% sets no limit"
          onCommit={(lossChance) => lossChance !== undefined && put({ lossChance })}
        />
      </div>
      <p class="small quiet">
        To start with, half of your cars sell within {carrying.daysToSell.days} days and your own cash costs{' '}
        {percentInWords(carrying.cashAnnualRatePpm)} a year. Change both, and add a floor plan, under Setup › Holding.
      </p>
    </fieldset>
  );
}
