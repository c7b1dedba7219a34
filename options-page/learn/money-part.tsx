import { type LostBecause, lostLot } from '../../src/domain/learn/money/lost-lot.ts';
import type { ProfitWalk } from '../../src/domain/learn/money/profit-walk.ts';
import { cents, sumCents } from '../../src/domain/money/cents.ts';
import { formatMoney } from '../../src/domain/money/format-money.ts';
import { TermLink } from '../../src/ui/term-link.tsx';
import { LOST_WORDS } from '../../src/views/learn/learn-words.ts';
import { countWords } from '../../src/views/words/count-words.ts';
import type { TermId } from '../../src/views/words/glossary.ts';
import { NotYet } from './not-yet.tsx';
import { ProfitBridge } from './profit-bridge.tsx';
import type { Learning } from './use-learning.ts';
import { WeekBars } from './week-bars.tsx';

const WHOLE = { cents: 'never' } as const;

/** Where the money went: of the average car, of each car, of the weeks, and of the lots that others bought. */
export function MoneyPart({ money, past }: Learning) {
  const { average, cars, weeks } = money;
  return (
    <>
      <header class="stack">
        <div class="row learn-head">
          <h1>Where the money went</h1>
          <button type="button" class="no-print" onClick={() => print()}>
            Print
          </button>
        </div>
        <p class="quiet prose">
          From the profit that was expected at the price paid to what became of it. Pack, overhead and the cost of
          selling are the same on both sides.
        </p>
      </header>
      <section class="panel stack">
        <h2>The average car</h2>
        {average === null ? (
          <NotYet missing="no car with a sale and an estimate">
            Record what a car sold for in its folder under <a href="#/books">Books</a>, or bring in a list of{' '}
            <a href="#/books/sold">sold cars</a>.
          </NotYet>
        ) : (
          <>
            <ProfitBridge
              walk={average}
              from="Expected profit"
              to={`Actual, average of ${countWords(average.cars, 'car', 'cars')}`}
            />
            <UnbilledNote walk={average} many />
          </>
        )}
      </section>
      <section class="panel stack">
        <h2>
          <TermLink term="week-score">The weeks</TermLink>
        </h2>
        {weeks.length === 0 ? (
          <NotYet missing="no week with a known price">
            Record under <a href="#/results">Results</a> what lots sold for, lost ones too.
          </NotYet>
        ) : (
          <>
            <p class="small quiet prose">
              Solid is what the cars you won were expected to earn, as a share of the best there was. The hatched band
              is what even the best way to bid reaches: 86% to 96%.
            </p>
            <WeekBars weeks={weeks.slice(0, 12)} />
          </>
        )}
      </section>
      <LostSection past={past} />
      {cars.length > 0 && (
        <section class="stack">
          <h2>Car by car</h2>
          {cars.slice(0, 40).map(({ past: { lot, title }, walk }) => (
            <details key={lot} class="panel walked-car">
              <summary>
                <span class="strong">{title}</span>
                <span class="quiet">
                  {formatMoney(walk.expected, WHOLE)} expected, {profitWords(walk)}
                </span>
              </summary>
              <ProfitBridge walk={walk} from="Expected profit" to="Actual profit" exact />
              <UnbilledNote walk={walk} />
              <a href={`#/books/${lot}`}>Folder</a>
            </details>
          ))}
        </section>
      )}
    </>
  );
}

const profitWords = ({ actual }: ProfitWalk): string =>
  actual < 0 ? `a loss of ${formatMoney(cents(-actual), WHOLE)}` : `${formatMoney(actual, WHOLE)} made`;

const BILLS = { fees: 'fees', transport: 'transport', recon: 'recon' } as const;

/** What of a walk is still what was expected, because no bill came. */
function UnbilledNote({ walk: { unbilled }, many = false }: { walk: ProfitWalk; many?: boolean }) {
  if (unbilled.length === 0) return null;
  const names = unbilled.map((part) => BILLS[part]).join(', ');
  return (
    <p class="small quiet prose">
      {many ? 'Some cars have no bill' : 'No bill'} for {names} yet. What was expected stands in for it.
    </p>
  );
}

const LOST_TERMS: Readonly<Partial<Record<LostBecause, TermId>>> = {
  execution: 'missed-lot',
  rationing: 'rationing-cost',
  rule: 'rule-cost',
};

/** Lots that others bought, by what they cost us. */
function LostSection({ past }: Pick<Learning, 'past'>) {
  const lost = past.flatMap((one) => lostLot(one) ?? []);
  if (lost.length === 0) return null;
  const unknown = past.filter(({ happened }) => happened.ended === 'lost').length - lost.length;
  const kinds = (['execution', 'rationing', 'rule', 'rightly'] as const).map((because) => {
    const own = lost.filter((one) => one.because === because);
    return { because, own, cost: sumCents(own.map(({ profit }) => (profit > 0 ? profit : cents(0)))) };
  });
  return (
    <section class="panel stack">
      <h2>Lots that others bought</h2>
      <dl class="lost-kinds">
        {kinds.map(({ because, own, cost }) => {
          const term = LOST_TERMS[because];
          return (
            <div key={because}>
              <dt>
                {term === undefined ? LOST_WORDS[because] : <TermLink term={term}>{LOST_WORDS[because]}</TermLink>}
              </dt>
              <dd class="number">
                {countWords(own.length, 'lot', 'lots')}
                {because !== 'rightly' && own.length > 0 && `, at most ${formatMoney(cost, WHOLE)}`}
              </dd>
            </div>
          );
        })}
      </dl>
      {unknown > 0 && (
        <p class="small quiet">
          {countWords(unknown, 'lost lot is', 'lost lots are')} not counted: the price or an estimate is missing.
        </p>
      )}
    </section>
  );
}
