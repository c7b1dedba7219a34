import { useState } from 'preact/hooks';
import type { Miss } from '../../src/domain/learn/money/misses.ts';
import { missInWords } from '../../src/views/learn/learn-words.ts';
import { dateInWords } from '../../src/views/words/date-words.ts';
import type { Learning } from './use-learning.ts';

const KINDS: Readonly<Record<Miss['kind'], string>> = {
  retail: 'Retail',
  recon: 'Recon',
  fees: 'Fees',
  days: 'Days',
  canceled: 'Canceled',
  lost: 'Missed lot',
};
const FIRST = 60;

/** Every forecast that was clearly off and every lot that should not have been lost, the latest first. */
export function MissesPart({ money: { misses } }: Learning) {
  const [all, setAll] = useState(false);
  const shown = all ? misses : misses.slice(0, FIRST);
  return (
    <>
      <header class="stack">
        <div class="row learn-head">
          <h1>Misses</h1>
          <button type="button" class="no-print" onClick={() => print()}>
            Print
          </button>
        </div>
        <p class="quiet prose">
          The latest first. One car in five sells outside its range even when every range is right.
        </p>
      </header>
      {misses.length === 0 ? (
        <p class="quiet prose">
          None so far. Cars that sold outside their range, recon or fees that ran over, cars that stand too long,
          canceled sales and lots lost below your max bid will be listed here.
        </p>
      ) : (
        <ol class="misses plain-list">
          {shown.map((miss) => (
            <li key={`${miss.lot}-${miss.kind}`} class="miss">
              <span class="small quiet">{dateInWords(miss.date)}</span>
              <span>
                <span class="tag">{KINDS[miss.kind]}</span> <a href={hrefOf(miss)}>{miss.title}</a>
                <span class="score-note">{missInWords(miss)}</span>
              </span>
            </li>
          ))}
        </ol>
      )}
      {shown.length < misses.length && (
        <button type="button" onClick={() => setAll(true)}>
          Show all {misses.length}
        </button>
      )}
    </>
  );
}

/** A car that was won has a folder; a lot that another bought has its history. */
const hrefOf = ({ kind, lot }: Miss): string => (kind === 'lost' ? `#/history/${lot}` : `#/books/${lot}`);
