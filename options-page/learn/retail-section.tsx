import type { PastLot } from '../../src/domain/learn/happened.ts';
import type { Scores } from '../../src/domain/learn/learn-report.ts';
import { casesOf } from '../../src/domain/learn/scores/cases-of.ts';
import { formatMoney } from '../../src/domain/money/format-money.ts';
import { moreOrLess, moreWords, percent } from '../../src/views/learn/learn-words.ts';
import { countWords } from '../../src/views/words/count-words.ts';
import { FifthsPicture } from './fifths-picture.tsx';
import { NotYet } from './not-yet.tsx';
import { RetailPicture } from './retail-picture.tsx';
import { ScoreFigure } from './score-figure.tsx';

const WHOLE = { cents: 'never' } as const;
/** More dots than this run into each other. */
const MOST_DOTS = 80;

/** Retail: each sold car over its range, how many are inside, and how far off the forecasts were. */
export function RetailSection({ past, retail }: { past: readonly PastLot[]; retail: Scores['retail'] }) {
  const { score, cases, missing } = retail;
  const titles = new Map<string, string>(past.map(({ lot, title }) => [lot, title]));
  const dots = casesOf(past)
    .retail.toSorted((a, b) => (a.date < b.date ? -1 : a.date > b.date ? 1 : 0))
    .slice(-MOST_DOTS)
    .map(({ lot, forecast: { mean, low, high }, actual }) => ({
      lot: lot as PastLot['lot'],
      title: titles.get(lot) ?? '',
      low: low / mean,
      high: high / mean,
      actual: actual / mean,
    }));
  return (
    <section class="panel stack">
      <h2>Retail</h2>
      {score === null ? (
        <NotYet missing={moreWords(missing, 'sold car', 'sold cars')}>
          Record what each car sold for in its folder under <a href="#/books">Books</a>, or bring in a list of{' '}
          <a href="#/books/sold">sold cars</a>. Cars that went at wholesale don’t count.
        </NotYet>
      ) : (
        <dl class="score-figures">
          <ScoreFigure term="inside-range" label="Inside the range" value={percent(score.inside.share)}>
            80% is meant; the truth is between {percent(score.inside.low)} and {percent(score.inside.high)} (
            {countWords(cases, 'car', 'cars')})
          </ScoreFigure>
          <ScoreFigure term="retail-level" label="Against expected retail" value={moreOrLess(score.level.value)}>
            {score.level.clear ? 'more than luck' : 'may be luck'}: between {moreOrLess(score.level.low)} and{' '}
            {moreOrLess(score.level.high)}
          </ScoreFigure>
          <ScoreFigure term="range-score" label="Range score" value={formatMoney(score.crps, WHOLE)}>
            off by {formatMoney(score.error, WHOLE)} a car without the range
          </ScoreFigure>
        </dl>
      )}
      {dots.length > 0 && (
        <RetailPicture
          dots={dots}
          caption={`What ${countWords(dots.length, 'sold car', 'sold cars')} brought, as % of expected retail. The bar is the range that was expected; a hollow dot is outside it.`}
        />
      )}
      {score !== null && <FifthsPicture fifths={score.fifths} />}
    </section>
  );
}
