import { bidWords } from '../../src/domain/bid/bid-words.ts';
import { tellApart } from '../../src/domain/close/say-close.ts';
import { lotTitle } from '../../src/domain/lot/car-name.ts';
import { formatMoney } from '../../src/domain/money/format-money.ts';
import { readingsOfClose } from '../../src/domain/time/close-time.ts';
import { sayClock } from '../../src/domain/time/say-time.ts';
import type { Zone } from '../../src/domain/time/zone.ts';
import { wantsAct } from '../../src/domain/week/closing-need.ts';
import type { Standing } from '../../src/views/lots/standing.ts';
import { plannedWords } from '../../src/views/lots/stop-words.ts';
import type { Closing } from '../../src/views/week/closing.ts';
import { needWords } from '../../src/views/week/closing-words.ts';

interface ClosingRowProps {
  readonly closing: Closing;
  readonly standing: Standing | undefined;
  readonly zone: Zone;
  /** The bracket that begins at this row, `above` inside one, null outside. */
  readonly bracket: { readonly rows: number; readonly count: number } | 'above' | null;
}

/** One closing: when, which car, where to stop, what is placed; on paper a box for how it ended. */
export function ClosingRow({ closing, standing, zone, bracket }: ClosingRowProps) {
  const { lot, close, need, rush, time, bid } = closing;
  const { facts } = lot;
  const holder = lot.clock?.handedTo?.to;
  const words = needWords(closing);
  const others = facts.close === undefined ? [] : readingsOfClose(facts.close).filter((at) => at !== close);
  return (
    <tr class={`day-row ${need} ${rush.kind === 'in' ? 'in-rush' : ''}`}>
      {bracket === null && <td />}
      {bracket !== null && bracket !== 'above' && (
        <td rowSpan={bracket.rows} class="day-bracket">
          <span>
            {bracket.count.toLocaleString('en-US')}
            <span class="visually-hidden"> closings too close together for one person</span>
          </span>
        </td>
      )}
      <td class="day-time">
        {sayClock(close, zone)}
        {facts.close !== undefined && facts.close.doubts.length > 0 && '?'}
      </td>
      <td>
        <a href={`#/lot/${lot.id}`} data-time={time} class="day-car">
          {lotTitle(facts)}
        </a>
        <span class="small quiet day-sub">
          {[
            facts.venueName ?? facts.venueId,
            facts.lotNumber && `lot\u00a0${facts.lotNumber}`,
            // A line must not end between the dots and what they stand before.
            facts.vin && `…\u2060${facts.vin.slice(-6)}`,
          ]
            .filter(Boolean)
            .join(' · ')}
          {holder !== undefined && <span class="day-holder">{holder} has it</span>}
        </span>
        {others.length > 0 && (
          <span class="small day-or">
            Close in doubt: could also be{' '}
            {tellApart([close, ...others], zone)
              .slice(1)
              .join(' or ')}
          </span>
        )}
      </td>
      <td class="number">
        <Stop standing={standing} />
        <span class={wantsAct(need) ? 'act small day-under' : 'small day-under'}>{words}</span>
      </td>
      <td class={wantsAct(need) ? 'act day-proxy' : 'day-proxy'}>
        <span class="no-print">{words}</span>
        <span class="paper-only">
          {need !== 'danger' && need !== 'bare' && need !== 'unsaid' ? (
            words
          ) : bid.is !== 'none' && bid.is !== 'ended' ? (
            // The hatched edge already says that it closes in the busy hours.
            bidWords(bid)
          ) : (
            <Box lines={['☐ placed', '$']} />
          )}
        </span>
      </td>
      <td class="paper-only day-result">
        {need === 'over' ? words : <Box lines={['☐ won ☐ lost ☐ not sold', 'at $']} />}
      </td>
    </tr>
  );
}

/** What is filled in by hand: a box to tick, and a line for the amount. */
function Box({ lines: [tick, amount] }: { lines: readonly [string, string] }) {
  return (
    <span class="day-box">
      <span>{tick}</span>
      <span class="day-amount">{amount}</span>
    </span>
  );
}

function Stop({ standing }: { standing: Standing | undefined }) {
  if (standing === undefined) return <span class="quiet">…</span>;
  if (standing.missing.length > 0) return <span class="missing">no max bid</span>;
  const planned = plannedWords(standing);
  return (
    <>
      <span class="day-stop">{standing.maxBid === null ? 'Don’t bid' : formatMoney(standing.maxBid)}</span>
      {planned !== undefined && <span class="small day-plan">plan: {planned}</span>}
    </>
  );
}
