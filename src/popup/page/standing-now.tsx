import { useContext, useMemo } from 'preact/hooks';
import { cents } from '../../domain/money/cents.ts';
import { formatMoney } from '../../domain/money/format-money.ts';
import type { Setup } from '../../domain/setup/setup.ts';
import type { LotState } from '../../folds/lot-state.ts';
import { standingsUnder } from '../../views/lots/standing.ts';
import { plannedWords } from '../../views/lots/stop-words.ts';
import { Planned } from '../planned.ts';

/** The price at which to stop and the room left, or what has to be said before there is one. */
export function StandingNow({ lot, setup }: { lot: LotState; setup: Setup }) {
  const planned = useContext(Planned);
  const standing = useMemo(() => standingsUnder(setup, planned).of(lot), [lot, setup, planned]);
  const { maxBid, headroom, missing, why } = standing;
  const planWords = plannedWords(standing);
  if (why !== undefined) return <p class="small">Can’t be worked out: {why}.</p>;
  if (missing.length > 0) return <p class="small">No max bid yet. {missing.join('. ')}.</p>;
  if (maxBid === null) return <p class="small">Don’t bid: no price meets your rules.</p>;
  return (
    <p class="row apart page-standing">
      <span>
        <span class="small quiet">Max bid </span>
        <strong class="figure">{formatMoney(maxBid)}</strong>
      </span>
      {planWords !== undefined && (
        <span>
          <span class="small quiet">Planned bid </span>
          <strong class="figure">{planWords}</strong>
        </span>
      )}
      {headroom !== null && (
        <span>
          <span class="small quiet">Headroom </span>
          <strong class="figure">
            {headroom < 0 ? `${formatMoney(cents(-headroom))} over max` : formatMoney(headroom)}
          </strong>
        </span>
      )}
    </p>
  );
}
