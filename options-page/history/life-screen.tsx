import { useEffect, useState } from 'preact/hooks';
import { undoesSale } from '../../src/domain/dispute/dispute.ts';
import { lotTitle } from '../../src/domain/lot/car-name.ts';
import { sayEnd } from '../../src/domain/sale/result-words.ts';
import { isCanceled } from '../../src/folds/bid-given.ts';
import type { LotState } from '../../src/folds/lot-state.ts';
import type { HistoryItem } from '../../src/store/journal/history.ts';
import { usePageSubject } from '../../src/ui/page-subject.ts';
import { useWorkspace } from '../../src/ui/workspace.ts';
import { EarlierLives } from '../lot/sale/earlier-lives.tsx';
import { EvidencePart } from './evidence-part.tsx';
import { FilesPart } from './files-part.tsx';
import { TimeLine } from './time-line.tsx';
import './life.css';

interface Life {
  readonly lot: LotState;
  readonly history: readonly HistoryItem[];
}

/** One lot's life: everything the journal says of it in order, its files, and the evidence pack. */
export function LifeScreen({ id }: { id: string }) {
  const life = useLife(id);
  usePageSubject(life ? lotTitle(life.lot.facts) : '');
  if (life === undefined) return <h1>Reading the history…</h1>;
  if (life === null)
    return (
      <section class="stack">
        <h1>This lot is not here</h1>
        <p>Adding it was undone, or the address is from another browser.</p>
        <p>
          <a href="#/lots">Back to the lots</a>
        </p>
      </section>
    );
  const { lot, history } = life;
  const { facts, sale, after } = lot;
  const isUndone = after?.disputes.some(({ outcome }) => outcome !== undefined && undoesSale(outcome.ended)) === true;
  return (
    <article class="life stack loose">
      <header class="stack">
        <div>
          <h1>{lotTitle(facts)}</h1>
          <p class="quiet">
            {[facts.vin, facts.venueName ?? facts.venueId, facts.lotNumber && `lot ${facts.lotNumber}`]
              .filter(Boolean)
              .join(' · ')}
          </p>
        </div>
        {sale?.result && (
          <p class="figure">
            {sayEnd(sale.result.result, isCanceled(lot))}
            {isUndone && ', and undone later'}
          </p>
        )}
        <div class="row no-print">
          {lot.dropped ? (
            <span class="tag">removed from your list</span>
          ) : (
            <a class="button" href={`#/lot/${lot.id}`}>
              Worksheet
            </a>
          )}
          <button type="button" onClick={() => print()}>
            Print
          </button>
        </div>
      </header>
      <EarlierLives lot={lot} />
      <TimeLine history={history} />
      <FilesPart lot={lot} />
      <EvidencePart lot={lot} />
    </article>
  );
}

/** Undefined while it is read, null when there is none. Read again whenever the lot changes, in whichever tab. */
function useLife(id: string): Life | null | undefined {
  const { store, say } = useWorkspace();
  const [life, setLife] = useState<Life | null>();
  useEffect(() => {
    let current = true;
    const read = async () => {
      const lots = await store.allLots();
      const lot = lots.find((one) => one.id === id);
      const history = lot === undefined ? [] : await store.lifeOfLot(lot.id);
      if (current) setLife(lot === undefined ? null : { lot, history });
    };
    const look = () => {
      read().catch((error: unknown) => say(String(error)));
    };
    look();
    const stop = store.subscribe((change) => {
      if (change.books || change.lots === 'many' || change.lots.some((one) => one === id)) look();
    });
    return () => {
      current = false;
      stop();
    };
  }, [store, id, say]);
  return life;
}
