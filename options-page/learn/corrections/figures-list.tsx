import type { Figure, Finding } from '../../../src/domain/learn/corrections/finding.ts';
import { figureWords, rangeWords } from '../../../src/views/learn/corrections/correction-words.ts';
import { LearnedRange } from './learned-range.tsx';

/** More lines than this are a table of their own, and the screen is for deciding. */
const SHOWN = 6;

/** Every figure of a correction: its value with its range, what counts without it, and how much is still belief. */
export function FiguresList({ finding }: { finding: Finding }) {
  const enough = finding.figures.filter((figure) => figure.enough);
  const shown = enough.slice(0, SHOWN);
  const few = finding.figures.length - enough.length;
  const more = enough.length - shown.length;
  return (
    <ul class="correction-list correction-figures">
      {shown.map((figure) => (
        <li key={figure.label}>
          <FigureLine figure={figure} />
        </li>
      ))}
      {more > 0 && <li class="quiet small">And {more} more lines.</li>}
      {few > 0 && (
        <li class="quiet small">
          {few === 1 ? 'One line has' : `${few} lines have`} fewer than {finding.least} bills and stays as estimated.
        </li>
      )}
    </ul>
  );
}

function FigureLine({ figure }: { figure: Figure }) {
  const { label, unit, without, learned } = figure;
  return (
    <>
      <div class="row apart">
        <span>{label}</span>
        <strong>{figureWords(unit, learned.value)}</strong>
      </div>
      <LearnedRange figure={figure} />
      <p class="quiet small">
        Range {rangeWords(figure)}; without it {figureWords(unit, without)}. {Math.round(learned.priorShare * 100)}% of
        it is still the starting assumption.
      </p>
    </>
  );
}
