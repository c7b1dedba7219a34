import { useMemo, useState } from 'preact/hooks';
import { SCORE_BY, type ScoreBy, scoresBy } from '../../src/domain/learn/learn-report.ts';
import { RadioChoice } from '../../src/ui/inputs/radio-choice.tsx';
import { Ledger } from '../../src/ui/tables/ledger.tsx';
import { ScrollX } from '../../src/ui/tables/scroll-x.tsx';
import { moreOrLess, moreWords, percent } from '../../src/views/learn/learn-words.ts';
import type { Learning } from './use-learning.ts';

const BY_WORDS: Readonly<Record<ScoreBy, string>> = {
  venue: 'Venue',
  kind: 'Make and model',
  estimator: 'Who estimated',
  quarter: 'Quarter',
};

type Row = ReturnType<typeof scoresBy>[number];

/** The same scores told apart, each hidden until its own group has enough. */
export function GroupsPart({ past, looking }: Learning) {
  const [by, setBy] = useState<ScoreBy>('venue');
  const rows = useMemo(() => scoresBy(past, by, looking), [past, by, looking]);
  return (
    <>
      <header class="stack">
        <h1>By venue, car and person</h1>
        <p class="quiet prose">
          With many groups one of them looks bad by luck alone. What is bold is more than luck makes in one of a
          hundred.
        </p>
      </header>
      <div class="row no-print">
        <RadioChoice
          legend="Group by"
          value={by}
          choices={SCORE_BY.map((value) => ({ value, label: BY_WORDS[value] }))}
          onCommit={setBy}
        />
        <button type="button" onClick={() => print()}>
          Print
        </button>
      </div>
      <ScrollX label={`Scores by ${BY_WORDS[by].toLowerCase()}`}>
        <Ledger
          caption={BY_WORDS[by]}
          captionClass="visually-hidden"
          rows={rows}
          rowKey={({ key }) => key}
          columns={[
            { label: BY_WORDS[by], heads: true, cell: ({ key }) => key || 'Nobody' },
            { label: 'Sold cars', number: true, cell: ({ scores }) => scores.retail.cases },
            { label: 'Inside the range', number: true, cell: insideWords },
            { label: 'Against expected retail', number: true, cell: levelWords },
            { label: 'Bids with a chance', number: true, cell: ({ scores }) => scores.chances.cases },
            { label: 'Won, and expected wins', number: true, cell: winsWords },
          ]}
        />
      </ScrollX>
    </>
  );
}

function insideWords({ scores: { retail } }: Row) {
  if (retail.score === null) return <span class="missing">{moreWords(retail.missing, 'car', 'cars')}</span>;
  const { share, low, high } = retail.score.inside;
  return (
    <>
      {percent(share)}{' '}
      <span class="small quiet">
        {percent(low)} to {percent(high)}
      </span>
    </>
  );
}

function levelWords({ scores: { retail } }: Row) {
  if (retail.score === null) return '';
  const { value, low, high, clear } = retail.score.level;
  return (
    <>
      {clear ? <strong>{moreOrLess(value)}</strong> : moreOrLess(value)}{' '}
      <span class="small quiet">
        {moreOrLess(low)} to {moreOrLess(high)}
      </span>
    </>
  );
}

function winsWords({ scores: { chances } }: Row) {
  if (chances.score === null) return <span class="missing">{moreWords(chances.missing, 'bid', 'bids')}</span>;
  const { wins, expectedWins, tilt } = chances.score;
  const words = `${wins.toFixed(1)} and ${expectedWins.toFixed(1)}`;
  return tilt === null ? words : <strong>{words}</strong>;
}
