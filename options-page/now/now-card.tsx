import { useState } from 'preact/hooks';
import type { LotAct } from '../../src/acts/lot-acts.ts';
import { bidWords, priceWords } from '../../src/domain/bid/bid-words.ts';
import { ZERO } from '../../src/domain/money/cents.ts';
import { formatMoney } from '../../src/domain/money/format-money.ts';
import type { Instant } from '../../src/domain/time/instant.ts';
import { sayTime } from '../../src/domain/time/say-time.ts';
import { HOUR } from '../../src/domain/time/units.ts';
import { useLotAct } from '../../src/ui/hooks/use-lot-act.ts';
import { useWorkspace } from '../../src/ui/workspace.ts';
import { RUSH_WORDS, rushOf } from '../../src/views/lots/rush-words.ts';
import type { Standing } from '../../src/views/lots/standing.ts';
import { noStopWords } from '../../src/views/lots/stop-words.ts';
import { actWords } from '../../src/views/words/act-words.ts';
import { timeLeft } from '../../src/views/words/close-words.ts';
import { LotActs } from './lot-acts.tsx';
import type { NowLot } from './now-lot.ts';

interface NowCardProps {
  readonly lot: NowLot;
  readonly people: readonly string[];
  readonly now: Instant;
  /** Whether what can be done about it is in sight at once. */
  readonly open: boolean;
}

/** An answer that could not be saved: it stays until it was, or another one is given. */
interface Unsaved {
  readonly act: LotAct;
  readonly why: string;
}

/** One lot: its name, the price at which to stop, the time left; and what can be done, at once or when it is opened. */
export function NowCard({ lot, people, now, open }: NowCardProps) {
  const act = useLotAct();
  const [unsaved, setUnsaved] = useState<Unsaved>();
  const answer = async (wanted: LotAct) => {
    const why = await act(lot.state, wanted, lot.standing.maxBid);
    setUnsaved(why === null ? undefined : { act: wanted, why });
  };
  return (
    <li class="now-card" id={`now-${lot.id}`} tabIndex={-1}>
      <details open={open}>
        <summary>
          <span class="now-name">{lot.name}</span>
          <span class="now-stop">
            <span class="small quiet">{lot.standing.maxBid === null ? '' : 'stop at'}</span>
            <span class={lot.standing.maxBid === null ? 'now-figure words' : 'now-figure'}>
              {stopFigure(lot.standing)}
            </span>
          </span>
          <span class="now-left">
            <span class={lot.close > now && lot.close - now < HOUR ? 'act' : ''}>{timeLeft(lot.close, now)}</span>
          </span>
          <span class={lot.bidAt(now).loud ? 'now-facts act small' : 'now-facts small'}>{standWords(lot, now)}</span>
        </summary>
        <p class="small quiet">
          <CloseLine lot={lot} /> <a href={`#/lot/${lot.id}`}>Worksheet</a>
        </p>
        {unsaved !== undefined && (
          <div class="note warning small" role="alert">
            <p>
              <span class="strong">Not saved: {actWords(unsaved.act)}</span> {unsaved.why}
            </p>
            <button type="button" onClick={() => void answer(unsaved.act)}>
              Save it again
            </button>
          </div>
        )}
        <LotActs lot={lot} people={people} now={now} onAct={(wanted) => void answer(wanted)} />
      </details>
    </li>
  );
}

function CloseLine({ lot }: { lot: NowLot }) {
  const { setup } = useWorkspace();
  const { facts, clock } = lot.state;
  const { extended } = clock ?? {};
  return (
    <>
      {[
        sayTime(lot.close, setup.store.zone),
        RUSH_WORDS[rushOf(setup).of(lot.close).kind],
        extended?.to === lot.close ? `extended ${extended.minutes} min` : '',
        facts.venueName ?? facts.venueId,
        facts.lotNumber && `lot ${facts.lotNumber}`,
      ]
        .filter(Boolean)
        .join(' · ')}
    </>
  );
}

function stopFigure(standing: Standing): string {
  const none = noStopWords(standing);
  return none === 'not yet' ? 'no max bid yet' : (none ?? formatMoney(standing.maxBid ?? ZERO));
}

/** What stands at the sale, as far as we know. */
function standWords(lot: NowLot, now: Instant): string {
  const { priceNow } = lot.state.facts;
  const bid = lot.bidAt(now);
  const { why } = lot.standing;
  return [
    why === undefined ? '' : `can’t be worked out: ${why}`,
    bidWords(bid),
    priceWords(bid),
    priceNow === undefined ? '' : `now ${formatMoney(priceNow)}`,
    lot.handedTo === undefined ? '' : `${lot.handedTo} has it`,
  ]
    .filter(Boolean)
    .join(' · ');
}
