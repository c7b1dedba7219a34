import type { PastLot } from '../../src/domain/learn/happened.ts';
import type { Scores } from '../../src/domain/learn/learn-report.ts';
import { SurvivalCurve } from '../../src/ui/charts/survival-curve.tsx';
import { moreWords } from '../../src/views/learn/learn-words.ts';
import { NotYet } from './not-yet.tsx';
import { ScoreFigure } from './score-figure.tsx';

/** Days to sell: what was believed as a line, what the cars did as steps, those that stand counted in. */
export function DaysSection({ days, past }: { days: Scores['days']; past: readonly PastLot[] }) {
  const { score, missing } = days;
  const latest = past.find(({ happened }) => happened.bought !== null)?.forecast.days;
  return (
    <section class="panel stack">
      <h2>Days to sell</h2>
      {score === null ? (
        <NotYet missing={moreWords(missing, 'sold car', 'sold cars')}>
          Record when each car sold in its folder under <a href="#/books">Books</a>. Cars that are still here count with
          their days so far.
        </NotYet>
      ) : (
        <>
          <dl class="score-figures">
            <ScoreFigure
              term="days-to-sell"
              label="Half sold within"
              value={score.actual === undefined ? 'more than half are here' : `${score.actual} days`}
            >
              {Math.round(score.forecast)} days were expected ({score.sold} sold, {score.unsold} still here)
            </ScoreFigure>
            {score.pace !== null && (
              <ScoreFigure term="sales-pace" label="Pace of sales" value={score.pace.value.toFixed(2)}>
                1 is as expected; the truth is between {score.pace.low.toFixed(2)} and {score.pace.high.toFixed(2)}
              </ScoreFigure>
            )}
          </dl>
          {latest !== undefined && (
            <SurvivalCurve
              believed={latest.survives}
              steps={score.steps}
              horizon={latest.horizon}
              median={latest.median}
              caption="Share of cars still unsold: dashed is what was expected of the latest car, steps are what all of them did, with a range around them."
            />
          )}
        </>
      )}
    </section>
  );
}
