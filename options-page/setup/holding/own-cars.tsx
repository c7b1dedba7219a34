import { useState } from 'preact/hooks';
import { daysAnswer } from '../../../src/domain/carrying/days-answer.ts';
import { FEWEST_SALES_TO_SHOW } from '../../../src/domain/carrying/kaplan-meier.ts';
import { stockOf } from '../../../src/domain/carrying/stock-record.ts';
import type { Setup } from '../../../src/domain/setup/setup.ts';
import { instant } from '../../../src/domain/time/instant.ts';
import { sayDate } from '../../../src/domain/time/say-time.ts';
import { dateIn } from '../../../src/domain/time/wall-clock.ts';
import { SurvivalCurve } from '../../../src/ui/charts/survival-curve.tsx';
import { useSetupEdit } from '../setup-edit.ts';
import { PasteStock } from './paste-stock.tsx';

/** What his own cars did, sold and unsold, beside what he says: the one corrects the other. */
export function OwnCars() {
  const { setup, change } = useSetupEdit();
  const [pasting, setPasting] = useState(false);
  const { stock } = setup;
  return (
    <fieldset class="stack">
      <legend>Your own cars</legend>
      {setup.carrying.daysToSell.kind === 'fixed' && stock !== undefined && (
        <p class="note">Not used while a fixed number of days is set above.</p>
      )}
      {stock === undefined ? (
        <p class="setup-prose">
          Paste your cars with the day each came in and the day it sold, and days to sell is based on them. Include
          unsold cars: leaving them out makes the average too short.
        </p>
      ) : (
        <StockPicture setup={setup} />
      )}
      {pasting ? (
        <PasteStock
          today={dateIn(setup.store.zone, instant(Date.now()))}
          onUse={(record) => {
            setPasting(false);
            change({ stock: record }, `${record.cars.length} of your own cars are used.`);
          }}
          onLeave={() => setPasting(false)}
        />
      ) : (
        <p class="row">
          <button type="button" onClick={() => setPasting(true)}>
            {stock === undefined ? 'Paste your own cars' : 'Paste a newer list'}
          </button>
          {stock !== undefined && (
            <button
              type="button"
              class="plain"
              onClick={() => change({ stock: { ...stock, cars: [] } }, 'Your own cars are no longer used.')}
            >
              Remove the list
            </button>
          )}
        </p>
      )}
    </fieldset>
  );
}

function StockPicture({ setup }: { setup: Setup }) {
  const { stock, carrying } = setup;
  const cars = stockOf(setup);
  if (stock === undefined || cars.length === 0) return <p class="quiet">The list is empty.</p>;
  const answer = daysAnswer(carrying, cars);
  const sold = cars.filter((car) => car.sold).length;
  return (
    <>
      <p>
        {cars.length} cars as of {sayDate(stock.asOf)}: {sold} sold, {cars.length - sold} not yet.
      </p>
      {answer && (
        <SurvivalCurve
          believed={answer.survives}
          steps={answer.steps}
          horizon={carrying.horizonDays}
          median={answer.median}
          caption={
            answer.steps.length === 0
              ? `With ${FEWEST_SALES_TO_SHOW} or more sold cars they are drawn as steps. They are already used.`
              : 'The steps are your own cars (Kaplan–Meier) with their 95% range. The dashed line is what a max bid uses.'
          }
        />
      )}
    </>
  );
}
