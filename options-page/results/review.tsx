import { useEffect, useMemo, useState } from 'preact/hooks';
import { totalResults } from '../../src/domain/sale/result-totals.ts';
import { useMedia } from '../../src/ui/hooks/use-media.ts';
import { LotsApartNote } from '../../src/ui/lots-apart-note.tsx';
import { FIRST_VIEW, groupsOf, type ResultView, rowsInView } from '../../src/views/results/result-view.ts';
import { GroupTable } from './group-table.tsx';
import { PrintedResults } from './printed-results.tsx';
import { ResultList } from './result-list.tsx';
import { ResultTools } from './result-tools.tsx';
import { Totals } from './totals.tsx';
import { useResultRows } from './use-result-rows.ts';

interface ReviewProps {
  readonly complete: boolean;
  /** How many closings wait for a result. */
  readonly open: number;
}

/** The results in the chosen view: what they come to, by week or venue or outcome, and each one. */
export function Review({ complete, open }: ReviewProps) {
  const { rows, apart } = useResultRows();
  const [view, setView] = useState<ResultView>(FIRST_VIEW);
  const shown = useMemo(() => rowsInView(rows, view), [rows, view]);
  const totals = useMemo(() => totalResults(shown), [shown]);
  const groups = useMemo(() => groupsOf(shown, view.group), [shown, view.group]);
  const onPaper = useMedia('print');
  const [printing, setPrinting] = useState(false);
  // The rows out of sight are drawn first, then printed.
  useEffect(() => {
    if (!printing) return;
    print();
    setPrinting(false);
  }, [printing]);

  if (!complete) return <p role="status">Reading your lots…</p>;
  if (rows.length + apart.length === 0) return <NoResults open={open} />;
  return (
    <>
      <LotsApartNote lots={apart} />
      <ResultTools rows={rows} view={view} onView={setView} shown={shown.length} onPrint={() => setPrinting(true)} />
      <Totals totals={totals} />
      <GroupTable groups={groups} view={view} onView={setView} />
      <ResultList rows={shown} />
      {shown.length === 0 && (
        <p>
          None of the {rows.length.toLocaleString('en-US')} results match.{' '}
          <button type="button" class="plain" onClick={() => setView(FIRST_VIEW)}>
            Show all
          </button>
        </p>
      )}
      {(onPaper || printing) && <PrintedResults rows={shown} />}
    </>
  );
}

function NoResults({ open }: { open: number }) {
  return (
    <div class="stack empty-list">
      <p>
        No results yet. When a lot has closed, enter how it ended: <kbd>w 12500</kbd> for won at $12,500,{' '}
        <kbd>l 13000</kbd> for lost at $13,000, <kbd>n</kbd> for not sold. Each is compared with your max bid at the
        time, so you see whether you stopped at the right price.
      </p>
      <p>
        <a class="button main" href="#/results/missing">
          {open === 0 ? 'See the closings' : `Catch up on ${open.toLocaleString('en-US')} closings`}
        </a>
      </p>
    </div>
  );
}
