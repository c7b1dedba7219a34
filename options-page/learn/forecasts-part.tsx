import { trendInWords } from '../../src/views/learn/learn-words.ts';
import { ChancesSection } from './chances-section.tsx';
import { CostsSection } from './costs-section.tsx';
import { DaysSection } from './days-section.tsx';
import { HalfLife } from './half-life.tsx';
import { RetailSection } from './retail-section.tsx';
import type { Learning } from './use-learning.ts';

/** Whether the forecasts were right: retail, chances, days, recon and fees, each with how sure the answer is. */
export function ForecastsPart({ past, scores }: Learning) {
  return (
    <>
      <header class="stack">
        <div class="row learn-head">
          <h1>Were the forecasts right?</h1>
          <button type="button" class="no-print" onClick={() => print()}>
            Print
          </button>
        </div>
        <p class="quiet prose">
          Each forecast stands as it was when the sale closed. What you learned later does not change it.
        </p>
        <HalfLife />
        {scores.trend !== null && (
          <p class="note warning" role="status">
            {trendInWords(scores.trend)}
          </p>
        )}
      </header>
      <RetailSection past={past} retail={scores.retail} />
      <ChancesSection chances={scores.chances} />
      <DaysSection days={scores.days} past={past} />
      <CostsSection recon={scores.recon} fees={scores.fees} />
    </>
  );
}
