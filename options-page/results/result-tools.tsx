import { useMemo } from 'preact/hooks';
import type { ResultRow } from '../../src/views/results/result-row.ts';
import { OUTCOMES, type ResultView, SORTS, sayWeek } from '../../src/views/results/result-view.ts';
import { OUTCOME_WORDS } from './group-table.tsx';
import { SavedViews } from './saved-views.tsx';

interface ResultToolsProps {
  readonly rows: readonly ResultRow[];
  readonly view: ResultView;
  readonly onView: (view: ResultView) => void;
  readonly shown: number;
  readonly onPrint: () => void;
}

const SORT_WORDS: Readonly<Record<ResultView['sort'], string>> = {
  latest: 'Latest first',
  'over-max': 'Furthest over our max',
  hammer: 'Highest price first',
  car: 'By car',
};

/** Which results are shown, in which order, and how many that makes. */
export function ResultTools({ rows, view, onView, shown, onPrint }: ResultToolsProps) {
  const { weeks, venues } = useMemo(
    () => ({
      weeks: [...new Set(rows.map(({ week }) => week))].sort().reverse(),
      venues: [...new Set(rows.map(({ venue }) => venue))].sort((a, b) => a.localeCompare(b, 'en-US')),
    }),
    [rows],
  );
  return (
    <div class="stack result-tools no-print">
      <div class="row">
        <input
          type="search"
          class="result-search"
          aria-label="Search the results"
          placeholder="Search: car, VIN, lot, venue, seller, who bid"
          value={view.search}
          onInput={(event) => onView({ ...view, search: event.currentTarget.value })}
        />
        <Choice
          label="Outcome"
          value={view.outcome}
          choices={OUTCOMES.map((key) => [key, OUTCOME_WORDS[key]])}
          onChoice={(outcome) => onView({ ...view, outcome: OUTCOMES.find((key) => key === outcome) ?? 'all' })}
        />
        <Choice
          label="Week"
          value={view.week}
          choices={[['', 'All weeks'], ...weeks.map((week) => [week, sayWeek(week)] as const)]}
          onChoice={(week) => onView({ ...view, week })}
        />
        <Choice
          label="Venue"
          value={view.venue}
          choices={[['', 'All venues'], ...venues.map((venue) => [venue, venue] as const)]}
          onChoice={(venue) => onView({ ...view, venue })}
        />
        <Choice
          label="Order"
          value={view.sort}
          choices={SORTS.map((key) => [key, SORT_WORDS[key]])}
          onChoice={(sort) => onView({ ...view, sort: SORTS.find((key) => key === sort) ?? 'latest' })}
        />
      </div>
      <div class="row">
        <SavedViews view={view} onView={onView} />
        <button type="button" onClick={onPrint}>
          Print
        </button>
        <span class="quiet small" role="status">
          {shown.toLocaleString('en-US')} of {rows.length.toLocaleString('en-US')} results
        </span>
      </div>
    </div>
  );
}

interface ChoiceProps {
  readonly label: string;
  readonly value: string;
  readonly choices: readonly (readonly [value: string, label: string])[];
  readonly onChoice: (value: string) => void;
}

function Choice({ label, value, choices, onChoice }: ChoiceProps) {
  const known = choices.some(([key]) => key === value);
  return (
    <label>
      <span class="visually-hidden">{label}</span>
      <select value={value} onChange={(event) => onChoice(event.currentTarget.value)}>
        {!known && <option value={value}>{value}</option>}
        {choices.map(([key, words]) => (
          <option key={key} value={key}>
            {words}
          </option>
        ))}
      </select>
    </label>
  );
}
