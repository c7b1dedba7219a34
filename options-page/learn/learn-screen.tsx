import { LotsApartNote } from '../../src/ui/lots-apart-note.tsx';
import { StillReading } from '../../src/ui/still-reading.tsx';
import { BookIt } from './book-it.tsx';
import { CorrectionsPart } from './corrections/corrections-part.tsx';
import { ForecastsPart } from './forecasts-part.tsx';
import { GroupsPart } from './groups-part.tsx';
import { LateNote } from './late-note.tsx';
import { LEARN_PARTS } from './learn-parts.ts';
import { MissesPart } from './misses-part.tsx';
import { MoneyPart } from './money-part.tsx';
import { useLearning } from './use-learning.ts';
import './learn.css';

/**
 * Were the forecasts right, where did the money go, and what should change? What was won and lost by week or venue, and what is
 * tied up, stands under Books › Review; each lot's result against its max bid under Results. Neither of them looks at a forecast.
 */
export function LearnScreen({ part }: { part: string }) {
  return (
    <div class="stack loose learn">
      <nav class="learn-nav no-print" aria-label="Learn">
        {LEARN_PARTS.map((each) => (
          <a
            key={each.part}
            href={each.part === '' ? '#/learn' : `#/learn/${each.part}`}
            aria-current={part === each.part ? 'page' : undefined}
          >
            {each.label}
          </a>
        ))}
      </nav>
      {/* Corrections read past lots by themselves, a few at a time, and wait for nothing else. */}
      {part === 'corrections' ? <CorrectionsPart /> : <PastParts part={part} />}
    </div>
  );
}

function PastParts({ part }: { part: string }) {
  const learning = useLearning();
  if (learning === null) return <StillReading title="Learn" words="Reading what was expected and what happened…" />;
  return (
    <>
      <LotsApartNote lots={learning.apart} />
      {part === 'money' && <MoneyPart {...learning} />}
      {part === 'misses' && <MissesPart {...learning} />}
      {part === 'groups' && <GroupsPart {...learning} />}
      {part !== 'money' && part !== 'misses' && part !== 'groups' && <ForecastsPart {...learning} />}
      <LateNote past={learning.past} />
      <BookIt />
    </>
  );
}
