import { FAIR_SCORE, type SaleWeek } from '../../src/domain/learn/money/sale-week.ts';
import { formatMoney } from '../../src/domain/money/format-money.ts';
import { dateInWords } from '../../src/views/words/date-words.ts';

const WHOLE = { cents: 'never' } as const;

/** Each week's expected profit as a share of the best there was, beside what even the best policy reaches. */
export function WeekBars({ weeks }: { weeks: readonly SaleWeek[] }) {
  const fair = { left: `${FAIR_SCORE.low * 100}%`, width: `${(FAIR_SCORE.high - FAIR_SCORE.low) * 100}%` };
  return (
    <ul class="sale-weeks plain-list">
      {weeks.map((week) => (
        <li key={week.week} class="sale-week">
          <span>
            Week of {dateInWords(week.week)}
            <span class="small quiet score-note">
              {formatMoney(week.achieved, WHOLE)} of {formatMoney(week.best, WHOLE)}
              {!week.ofPurse && ', with the money that you spent'}
              {week.unknown.length > 0 && `; ${week.unknown.length} without a price left out`}
            </span>
          </span>
          <span class="sale-week-track" aria-hidden="true">
            <span class="sale-week-fair" style={fair} />
            {week.score !== null && (
              <span class="sale-week-bar" style={{ width: `${Math.max(0, week.score) * 100}%` }} />
            )}
          </span>
          <span class="number">{week.score === null ? 'nothing to earn' : `${Math.round(week.score * 100)}%`}</span>
        </li>
      ))}
    </ul>
  );
}
