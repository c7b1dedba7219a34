import type { AppraisedRetail } from '../../../src/domain/appraisal/appraised-retail.ts';
import { showFold } from '../fold.tsx';
import { basisWords, rangeWords } from '../retail/retail-words.ts';

/** What the first landing of the walk rests on, and the way to all of it. */
export function retailBehind(retail: AppraisedRetail | undefined) {
  if (retail === undefined) return null;
  return (
    <>
      {basisWords(retail)} {rangeWords(retail)}.{' '}
      <button type="button" class="plain no-print" onClick={() => showFold('retail')}>
        See the cars behind it
      </button>
    </>
  );
}
