import type { ReadBand } from '../../src/domain/fees/fee-rows-to-bands.ts';
import { formatMoney } from '../../src/domain/money/format-money.ts';
import { percentInWords } from '../../src/domain/setup/value-words.ts';

/** How the pasted lines were read, before anything is taken from them. */
export function PastedBands({ bands, complete }: { bands: readonly ReadBand[]; complete: boolean }) {
  return (
    <div class="scroll-x">
      <table class="ledger setup-table">
        <caption class="small quiet">{complete ? 'Read as' : 'Read so far'}</caption>
        <thead>
          <tr>
            <th scope="col" class="number">
              Line
            </th>
            <th scope="col" class="number">
              From
            </th>
            <th scope="col">Fee</th>
          </tr>
        </thead>
        <tbody>
          {bands.map(({ line, band, note }) => (
            <tr key={`${line}-${band.fromCents}`}>
              <td class="number quiet">{line}</td>
              <td class="number">{formatMoney(band.fromCents)}</td>
              <td>
                {feeInWords(band)}
                {note && <div class="small quiet">{note}</div>}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}

function feeInWords({ flatCents, ratePpm, minimumCents, maximumCents }: ReadBand['band']): string {
  const parts = [
    (flatCents > 0 || ratePpm === 0) && formatMoney(flatCents),
    ratePpm > 0 && percentInWords(ratePpm),
  ].filter(Boolean);
  const limits = [
    minimumCents !== undefined && `at least ${formatMoney(minimumCents)}`,
    maximumCents !== undefined && `at most ${formatMoney(maximumCents)}`,
  ].filter(Boolean);
  return [parts.join(' + '), ...limits].join(', ');
}
