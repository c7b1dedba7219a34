import type { Contradiction } from '../../src/domain/claims/contradictions.ts';
import { lotTitle } from '../../src/domain/lot/car-name.ts';
import { formatMoney } from '../../src/domain/money/format-money.ts';
import type { Instant } from '../../src/domain/time/instant.ts';
import type { LotState } from '../../src/journal/lot-state.ts';
import { CloseText } from '../../src/ui/close-text.tsx';
import type { Standing } from '../../src/ui/standing.ts';

interface LotRowProps {
  readonly lot: LotState;
  readonly index: number;
  readonly top: number;
  readonly height: number;
  readonly standing: Standing;
  readonly doubts: readonly Contradiction[];
  readonly now: Instant;
}

/** One lot: when it closes, what it is, and the price at which to stop as the largest figure. */
export function LotRow({ lot, index, top, height, standing, doubts, now }: LotRowProps) {
  const { facts } = lot;
  return (
    <div
      class="lot-row"
      role="row"
      tabIndex={-1}
      aria-rowindex={index + 2}
      style={{ transform: `translateY(${top}px)`, height: `${height}px` }}
    >
      <div class="lot-close" role="cell">
        <CloseText close={facts.close} now={now} />
      </div>
      <div class="lot-car" role="cell">
        <a href={`#/lot/${lot.id}`} data-row={index} class="lot-name">
          {lotTitle(facts)}
        </a>
        <span class="quiet small lot-sub">
          {[
            facts.miles === undefined ? undefined : `${facts.miles.toLocaleString('en-US')} mi`,
            facts.venueName ?? facts.venueId,
            facts.lotNumber && `lot ${facts.lotNumber}`,
            facts.vin && `…${facts.vin.slice(-6)}`,
          ]
            .filter(Boolean)
            .join(' · ')}
        </span>
      </div>
      <div class="lot-price number" role="cell">
        <span class="lot-label">now </span>
        {facts.priceNow === undefined ? <span class="missing">no price</span> : formatMoney(facts.priceNow)}
      </div>
      <div class="lot-max number" role="cell">
        <MaxBid standing={standing} />
      </div>
      <div class="lot-headroom number" role="cell">
        <Headroom standing={standing} />
      </div>
      <div class="lot-todo" role="cell">
        <Todo lot={lot} standing={standing} doubts={doubts} now={now} />
      </div>
    </div>
  );
}

function MaxBid({ standing }: { standing: Standing }) {
  if (standing.missing.length > 0) return <span class="missing">not yet</span>;
  if (standing.maxBid === null) return <span class="strong">no price pays</span>;
  return <span class="lot-figure">{formatMoney(standing.maxBid)}</span>;
}

function Headroom({ standing }: { standing: Standing }) {
  if (standing.headroom === null) return null;
  if (standing.headroom >= 0) {
    return (
      <>
        <span class="lot-label">room </span>
        {formatMoney(standing.headroom)}
      </>
    );
  }
  return <span>{formatMoney((standing.headroom * -1) as typeof standing.headroom)} past</span>;
}

/** The one thing to do next, or that it is done. */
function Todo({ lot, standing, doubts, now }: Pick<LotRowProps, 'lot' | 'standing' | 'doubts' | 'now'>) {
  const { facts } = lot;
  const handedTo = lot.clock?.handedTo?.to;
  const closed = facts.close !== undefined && facts.close.instant <= now;
  if (closed) return <span class="tag">closed</span>;
  if (standing.missing.length > 0) return <span class="act small">{standing.missing[0]}</span>;
  if (facts.close === undefined) return <span class="act small">Say when it closes</span>;
  if (facts.close.doubts.length > 0) return <span class="tag doubt">check the close</span>;
  if (doubts.length > 0) return <span class="tag doubt">check the listing</span>;
  const placed = facts.proxy === undefined ? null : `Placed ${formatMoney(facts.proxy)}`;
  if (handedTo !== undefined)
    return <span class="small">{[`${handedTo} has it`, placed].filter(Boolean).join('; ')}</span>;
  if (placed !== null) return <span class="small">{placed}</span>;
  if (standing.headroom !== null && standing.headroom < 0) return <span class="small quiet">Let it go</span>;
  if (standing.maxBid === null) return <span class="small quiet">Let it go</span>;
  return <span class="act small">Place a proxy</span>;
}
