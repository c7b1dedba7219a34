import { MINUTE } from '../../src/domain/time/units.ts';
import { useNow } from '../../src/ui/hooks/use-now.ts';
import { useWorkspace } from '../../src/ui/workspace.ts';
import { isOpenClosing } from '../../src/views/results/open-closings.ts';
import { Closings } from './closings.tsx';
import { Review } from './review.tsx';
import './results.css';

/** How every sale ended, reviewed; and the closings that nobody noted a result for, to be caught up on. */
export function ResultsScreen({ part }: { part: string }) {
  const { lots, complete } = useWorkspace();
  const minute = Math.floor(useNow(MINUTE) / MINUTE) * MINUTE;
  const open = lots.reduce((count, lot) => count + (isOpenClosing(lot, minute) ? 1 : 0), 0);
  const missing = part === 'missing';
  return (
    <div class="results stack">
      <div class="row apart">
        <h1>{missing ? 'Closed without a result' : 'Results'}</h1>
        <nav class="row no-print" aria-label="Results">
          <a class="button" href="#/results" aria-current={missing ? undefined : 'page'}>
            Review
          </a>
          <a class="button" href="#/results/missing" aria-current={missing ? 'page' : undefined}>
            Without a result ({open.toLocaleString('en-US')})
          </a>
        </nav>
      </div>
      {missing ? <Closings minute={minute} complete={complete} /> : <Review complete={complete} open={open} />}
    </div>
  );
}
