import { formatMoney } from '../../src/domain/money/format-money.ts';
import { ENDING_WORDS } from '../../src/domain/sale/result-words.ts';
import { Ledger } from '../../src/ui/tables/ledger.tsx';
import {
  CANCELED_WORDS,
  GROUPS,
  OUTCOMES,
  type ResultGroup,
  type ResultView,
} from '../../src/views/results/result-view.ts';

interface GroupTableProps {
  readonly groups: readonly ResultGroup[];
  readonly view: ResultView;
  readonly onView: (view: ResultView) => void;
}

const BY: Readonly<Record<ResultView['group'], string>> = { week: 'Week', venue: 'Venue', outcome: 'Outcome' };

/** The shown results summed up by week, venue or outcome; a name narrows the list to it. */
export function GroupTable({ groups, view, onView }: GroupTableProps) {
  return (
    <section class="stack" aria-label="Totals">
      <fieldset class="row no-print">
        <legend class="visually-hidden">Totals by</legend>
        {GROUPS.map((group) => (
          <button
            key={group}
            type="button"
            aria-pressed={view.group === group}
            onClick={() => onView({ ...view, group })}
          >
            By {BY[group].toLowerCase()}
          </button>
        ))}
      </fieldset>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: it scrolls, so the keyboard must reach it */}
      <div class="result-groups" tabIndex={0} role="region" aria-label={`Totals by ${BY[view.group].toLowerCase()}`}>
        <Ledger
          rows={groups}
          rowKey={({ key }) => key}
          columns={[
            {
              label: BY[view.group],
              cell: ({ key, label }) => (
                <button type="button" class="plain in-print" onClick={() => onView(narrowed(view, key))}>
                  {label}
                </button>
              ),
            },
            { label: 'Won', number: true, cell: ({ totals }) => totals.won.toLocaleString('en-US') },
            { label: 'Hammer', number: true, cell: ({ totals }) => formatMoney(totals.hammer) },
            { label: 'Lost', number: true, cell: ({ totals }) => totals.lost.toLocaleString('en-US') },
            {
              label: 'Lost below our max',
              number: true,
              cell: ({ totals }) => (totals.compared === 0 ? '—' : `${totals.withinReach} of ${totals.compared}`),
            },
            {
              label: 'Other',
              number: true,
              cell: ({ totals }) =>
                (totals.canceled + totals.pending + totals.notSold + totals.other).toLocaleString('en-US'),
            },
          ]}
        />
      </div>
    </section>
  );
}

function narrowed(view: ResultView, key: string): ResultView {
  switch (view.group) {
    case 'week':
      return { ...view, week: key };
    case 'venue':
      return { ...view, venue: key };
    case 'outcome':
      return { ...view, outcome: OUTCOMES.find((outcome) => outcome === key) ?? 'all' };
  }
}

/** What each choice of an outcome is called. */
export const OUTCOME_WORDS: Readonly<Record<ResultView['outcome'], string>> = {
  all: 'All outcomes',
  'within-reach': 'Lost below our max',
  canceled: CANCELED_WORDS,
  ...ENDING_WORDS,
};
