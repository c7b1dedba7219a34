import type { ReadBand } from '../../src/domain/fees/fee-rows-to-bands.ts';
import { formatMoney } from '../../src/domain/money/format-money.ts';
import { percentInWords } from '../../src/domain/setup/value-words.ts';
import { Ledger } from '../../src/ui/tables/ledger.tsx';

/** How the pasted lines were read, before anything is taken from them. */
export function PastedBands({ bands, complete }: { bands: readonly ReadBand[]; complete: boolean }) {
  return (
    <div class="scroll-x">
      <Ledger
        class="setup-table"
        caption={complete ? 'Read as' : 'Read so far'}
        captionClass="small quiet"
        rows={bands}
        rowKey={({ line, band }) => `${line}-${band.fromCents}`}
        columns={[
          { label: 'Line', number: true, class: 'quiet', cell: ({ line }) => line },
          { label: 'From', number: true, cell: ({ band }) => formatMoney(band.fromCents) },
          {
            label: 'Fee',
            cell: ({ band, note }) => (
              <>
                {feeInWords(band)}
                {note && <div class="small quiet">{note}</div>}
              </>
            ),
          },
        ]}
      />
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
