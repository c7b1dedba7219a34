import type { Scores } from '../../src/domain/learn/learn-report.ts';
import { moreWords, percent } from '../../src/views/learn/learn-words.ts';
import { NotYet } from './not-yet.tsx';
import { ReliabilityPicture } from './reliability-picture.tsx';
import { ScoreFigure } from './score-figure.tsx';

const TILT = {
  more: 'You win clearly more often than the chances say.',
  fewer: 'You win clearly less often than the chances say.',
} as const;

/** Chances to win: how often a bid won that was given such a chance. Nothing where no bid was saved with its chance. */
export function ChancesSection({ chances }: { chances: Scores['chances'] }) {
  const { score, cases, missing } = chances;
  if (cases === 0) return null;
  return (
    <section class="panel stack">
      <h2>Chances to win</h2>
      {score === null ? (
        <NotYet missing={moreWords(missing, 'bid with a chance', 'bids with a chance')}>
          Record under <a href="#/results">Results</a> how each lot that you bid on ended. Lost lots count as much as
          won ones.
        </NotYet>
      ) : (
        <>
          <dl class="score-figures">
            <ScoreFigure term="brier-score" label="Brier score" value={score.brier.toFixed(3)}>
              always saying {percent(score.baseRate.chance)} would score {score.baseRate.brier.toFixed(3)} ({cases}{' '}
              bids)
            </ScoreFigure>
          </dl>
          {score.tilt !== null && <p class="note">{TILT[score.tilt]}</p>}
          <ReliabilityPicture
            bins={score.bins}
            caption={score.bins
              .map((bin) => `Of ${bin.cases} bids given about ${percent(bin.said)}, ${percent(bin.won.share)} won`)
              .join('. ')
              .concat('.')}
          />
        </>
      )}
    </section>
  );
}
