import { useMemo, useState } from 'preact/hooks';
import { type Month, monthInWords } from '../../../src/domain/books/month.ts';
import {
  type AgainstMax,
  REVIEW_BY,
  type ReviewBy,
  type ReviewGroup,
  reviewGroup,
  reviewGroups,
} from '../../../src/domain/books/review/review-groups.ts';
import { type Cents, cents } from '../../../src/domain/money/cents.ts';
import { formatMoney } from '../../../src/domain/money/format-money.ts';
import { addDays } from '../../../src/domain/time/calendar-day.ts';
import type { LocalDate } from '../../../src/domain/time/local-date.ts';
import { ChoiceInput } from '../../../src/ui/inputs/choice-input.tsx';
import { RadioChoice } from '../../../src/ui/inputs/radio-choice.tsx';
import { type SortColumn, SortTable } from '../../../src/ui/tables/sort-table.tsx';
import { TermLink } from '../../../src/ui/term-link.tsx';
import { useWorkspace } from '../../../src/ui/workspace.ts';
import { reviewLots } from '../../../src/views/books/review-lots.ts';
import { countWords } from '../../../src/views/words/count-words.ts';
import { dateInWords } from '../../../src/views/words/date-words.ts';
import type { TermId } from '../../../src/views/words/glossary.ts';
import { useBooks } from '../use-books.ts';
import { GrossPicture } from './gross-picture.tsx';
import { ResultsOut } from './results-out.tsx';
import { WonLostPicture } from './won-lost-picture.tsx';

const BY_WORDS: Readonly<Record<ReviewBy, string>> = { week: 'Week', month: 'Month', venue: 'Venue', buyer: 'Buyer' };
const DAYS = [
  { value: '31', label: 'the last 31 days' },
  { value: '92', label: 'the last 92 days' },
  { value: '366', label: 'the last 366 days' },
];

/** Columns of the second table: all of them beside each other are wider than a screen. */
const MONEY: ReadonlySet<string> = new Set([
  'hammer',
  'allIn',
  'tiedUp',
  'openDisputes',
  'disputed',
  'expectedGross',
  'actualGross',
]);

/** What was won and lost, what it cost, what is tied up, and whether it went as expected. */
export function ReviewPart() {
  const { setup } = useWorkspace();
  const { lots, folders, today } = useBooks();
  const [by, setBy] = useState<ReviewBy>('week');
  const [days, setDays] = useState<string>();
  const [venue, setVenue] = useState<string>();
  const all = useMemo(() => reviewLots(lots, folders, setup.store.zone), [lots, folders, setup]);
  const from = days === undefined ? '' : addDays(today, 1 - Number(days));
  const shown = all.filter((lot) => lot.day >= from && (venue === undefined || lot.venue === venue));
  const groups = reviewGroups(shown, by);
  const venues = [...new Set(all.map((lot) => lot.venue))].sort();
  const words = (key: string) => nameOf(key, by);
  return (
    <>
      <header class="stack">
        <h1>Review</h1>
        <p class="quiet prose">Every lot with a result. Lots without one are not included; find them under Results.</p>
      </header>
      <div class="row no-print review-tools">
        <RadioChoice
          legend="Group by"
          value={by}
          choices={REVIEW_BY.map((value) => ({ value, label: BY_WORDS[value] }))}
          onCommit={setBy}
        />
        <ChoiceInput label="Ended in" value={days} none="all dates" choices={DAYS} onCommit={setDays} />
        <ChoiceInput
          label="Venue"
          value={venue}
          none="all venues"
          choices={venues.map((value) => ({ value, label: value }))}
          onCommit={setVenue}
        />
        <button type="button" onClick={() => print()}>
          Print
        </button>
        <ResultsOut from={from} venue={venue} />
      </div>
      {shown.length > 0 && <Figures all={reviewGroup('all', shown)} />}
      {shown.length > 0 && (
        <div class="review-pictures">
          <WonLostPicture groups={groups} nameOf={words} />
          <GrossPicture groups={groups} nameOf={words} />
        </div>
      )}
      {(['bids', 'money'] as const).map((which) => (
        <div key={`${by} ${which}`} class="review-table">
          <SortTable
            label={`${which === 'bids' ? 'Won and lost' : 'Money'} by ${BY_WORDS[by].toLowerCase()}`}
            columns={columnsFor(by, words).filter(({ key }) => key === 'key' || MONEY.has(key) === (which === 'money'))}
            rows={groups}
            rowKey={({ key }) => key}
            first={by === 'week' || by === 'month' ? '-key' : which === 'bids' ? '-won' : '-hammer'}
            totalLabel="Total"
            empty="No results in this period."
          />
        </div>
      ))}
      <p class="quiet small prose">
        Gross is the sale price less the car’s bills. It leaves out pack, overhead and the cost of selling. It is not an
        income statement; your accountant makes that.
      </p>
    </>
  );
}

function nameOf(key: string, by: ReviewBy): string {
  if (by === 'week') return `Week of ${dateInWords(key as LocalDate)}`;
  return by === 'month' ? monthInWords(key as Month) : key;
}

const share = (value: number | null) => (value === null ? '–' : `${Math.round(value * 100)}%`);
const money = (value: Cents | null) => (value === null ? '–' : formatMoney(value, { cents: 'never' }));

const exact = (value: Cents) => formatMoney(value);
const averageOf = (sum: Cents, of: number) =>
  of < 2 ? '' : `, ${formatMoney(cents(Math.round(sum / of)))} on average`;

/** The few numbers that are asked for first. */
function Figures({ all }: { all: ReviewGroup }) {
  return (
    <dl class="review-figures">
      <Figure term="result" what="Won" value={`${all.won} of ${all.won + all.lost}`} note={wonWords(all)} />
      <Figure
        term="hammer-price"
        what="Hammer"
        value={exact(all.hammer)}
        note={`of ${countWords(all.won, 'car', 'cars')} won${averageOf(all.hammer, all.won)}`}
      />
      <Figure
        term="all-in"
        what="All-in"
        value={exact(all.allIn)}
        note={`recorded for ${all.billed} of them${averageOf(all.allIn, all.billed)}`}
      />
      <Figure term="tied-up" what="Tied up" value={money(all.tiedUp)} note={tiedUpWords(all)} />
      <Figure term="against-max" what="Wins against max" value={leftWords(all.wins)} note={againstWords(all.wins)} />
      <Figure
        term="against-max"
        what="Losses against max"
        value={leftWords(all.losses)}
        note={againstWords(all.losses)}
      />
      <Figure
        term="gross"
        what="Gross on cars sold"
        value={money(all.actualGross)}
        note={all.expectedGross === null ? 'nothing sold yet' : `${money(all.expectedGross)} was expected`}
      />
      <Figure
        term="dispute"
        what="Open disputes"
        value={String(all.openDisputes)}
        note={all.openDisputes === 0 ? '' : `${money(all.disputed)} in dispute`}
      />
    </dl>
  );
}

/** The rate counts purchases that stand, so canceled ones are named beside it. */
const wonWords = ({ winRate, canceled }: ReviewGroup) =>
  `${share(winRate)}${canceled === 0 ? '' : `; ${countWords(canceled, 'canceled sale', 'canceled sales')} left out`}`;

/** What was left up to the max bids: on losses, what a bid up to max could still have tried for. */
const leftWords = ({ under, left }: AgainstMax) => (under === 0 ? '–' : `${formatMoney(left)} left under`);

/** Under, at and over max apart: one average over all would hide both. */
function againstWords({ under, leftEach, at, over, overEach, notCompared }: AgainstMax): string {
  return [
    leftEach !== null && `${under} under max${under === 1 ? '' : `, ${formatMoney(leftEach)} each on average`}`,
    at > 0 && `${at} at max`,
    overEach !== null && `${over} over max by ${formatMoney(overEach)}${over === 1 ? '' : ' on average'}`,
    notCompared > 0 && `${notCompared} without a price or a max bid`,
  ]
    .filter((words) => words !== false)
    .join('; ');
}

/** Cars whose cost nobody knows are named, not guessed. */
const tiedUpWords = ({ tiedUpUnknown }: ReviewGroup) =>
  `all-in of unsold cars${tiedUpUnknown === 0 ? '' : `; ${countWords(tiedUpUnknown, 'car', 'cars')} left out, cost unknown`}`;

interface FigureProps {
  readonly term: TermId;
  readonly what: string;
  readonly value: string;
  readonly note: string;
}

const Figure = ({ term, what, value, note }: FigureProps) => (
  <div>
    <dt class="small quiet">
      <TermLink term={term}>{what}</TermLink>
    </dt>
    <dd>
      <span class="figure">{value}</span>
      <span class="small quiet block">{note}</span>
    </dd>
  </div>
);

function columnsFor(by: ReviewBy, words: (key: string) => string): readonly SortColumn<ReviewGroup>[] {
  const count = (
    key: 'lots' | 'bidOn' | 'bids' | 'won' | 'canceled' | 'lost' | 'notSold' | 'openDisputes',
    label: string,
  ): SortColumn<ReviewGroup> => ({
    key,
    label,
    number: true,
    by: (row) => row[key],
    cell: (row) => row[key],
    total: (rows) => rows.reduce((sum, row) => sum + row[key], 0),
  });
  const amount = (
    key: 'hammer' | 'allIn' | 'tiedUp' | 'disputed' | 'expectedGross' | 'actualGross',
    label: string,
  ): SortColumn<ReviewGroup> => ({
    key,
    label,
    number: true,
    by: (row) => row[key],
    cell: (row) => money(row[key]),
    total: (rows) => money(cents(rows.reduce((sum, row) => sum + (row[key] ?? 0), 0))),
  });
  const against = (whose: 'wins' | 'losses', side: 'under' | 'over'): SortColumn<ReviewGroup> => {
    const average = ({ [whose]: { leftEach, overEach } }: ReviewGroup) => (side === 'under' ? leftEach : overEach);
    return {
      key: `${whose}-${side}`,
      label: `${whose === 'wins' ? 'Won' : 'Lost'} ${side} max, avg.`,
      number: true,
      by: average,
      cell: (row) => {
        const of = average(row);
        return of === null ? '–' : `${formatMoney(of)} × ${row[whose][side]}`;
      },
    };
  };
  return [
    { key: 'key', label: BY_WORDS[by], by: ({ key }) => key, cell: ({ key }) => words(key) },
    count('lots', 'Lots'),
    count('bidOn', 'Bid on'),
    count('bids', 'Bids placed'),
    count('won', 'Won'),
    count('canceled', 'Canceled'),
    count('lost', 'Lost'),
    count('notSold', 'Not sold'),
    {
      key: 'rate',
      label: 'Win rate',
      number: true,
      by: ({ winRate }) => winRate,
      cell: ({ winRate }) => share(winRate),
      total: (rows) => share(rate(rows)),
    },
    amount('hammer', 'Hammer'),
    amount('allIn', 'All-in'),
    amount('tiedUp', 'Tied up'),
    {
      key: 'of-max',
      label: 'Paid as % of max',
      number: true,
      by: ({ paidOfMax }) => paidOfMax,
      cell: ({ paidOfMax }) => share(paidOfMax),
    },
    against('wins', 'under'),
    against('wins', 'over'),
    against('losses', 'under'),
    against('losses', 'over'),
    count('openDisputes', 'Disputes'),
    amount('disputed', 'Disputed $'),
    amount('expectedGross', 'Expected gross'),
    amount('actualGross', 'Gross'),
  ];
}

function rate(rows: readonly ReviewGroup[]): number | null {
  const won = rows.reduce((sum, row) => sum + row.won, 0);
  const decided = won + rows.reduce((sum, row) => sum + row.lost, 0);
  return decided === 0 ? null : won / decided;
}
