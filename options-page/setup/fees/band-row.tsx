import type { FeeBand } from '../../../src/domain/fees/fee-schedule.ts';
import { ZERO } from '../../../src/domain/money/cents.ts';
import { formatMoney } from '../../../src/domain/money/format-money.ts';
import { ppm } from '../../../src/domain/money/rate.ts';
import { RateInput } from '../../../src/ui/inputs/rate-input.tsx';
import { withField } from '../../../src/ui/tables/list-edit.ts';
import { MoneyCell } from '../../../src/ui/tables/money-cell.tsx';
import { CellFaults } from '../cell-faults.tsx';
import type { FeeFall } from './band-edit.ts';

export interface BandRowProps {
  readonly band: FeeBand;
  readonly index: number;
  readonly fall: FeeFall | undefined;
  readonly path: readonly PropertyKey[];
  readonly onChange: (band: FeeBand) => void;
  readonly onInsert: () => void;
  readonly onRemove?: () => void;
}

/** One band; a percentage or flat fee of nothing is an empty cell. */
export function BandRow({ band, index, fall, path, onChange, onInsert, onRemove }: BandRowProps) {
  const name = `Band ${index + 1}`;
  return (
    <tbody>
      <tr>
        <td data-focus={`row-${index}`}>
          <MoneyCell
            label={`${name}, from`}
            value={band.fromCents}
            required
            onCommit={(fromCents = ZERO) => onChange({ ...band, fromCents })}
          />
        </td>
        <td>
          <MoneyCell
            label={`${name}, flat`}
            value={band.flatCents === 0 ? undefined : band.flatCents}
            placeholder="0"
            onCommit={(flatCents = ZERO) => onChange({ ...band, flatCents })}
          />
        </td>
        <td>
          <RateInput
            label={`${name}, percent`}
            value={band.ratePpm === 0 ? undefined : band.ratePpm}
            unit=""
            onCommit={(ratePpm = ppm(0)) => onChange({ ...band, ratePpm })}
          />
        </td>
        <td>
          <MoneyCell
            label={`${name}, minimum`}
            value={band.minimumCents}
            onCommit={(least) => onChange(withField(band, 'minimumCents', least))}
          />
        </td>
        <td>
          <MoneyCell
            label={`${name}, maximum`}
            value={band.maximumCents}
            onCommit={(most) => onChange(withField(band, 'maximumCents', most))}
          />
        </td>
        <td class="cell-act">
          <button
            type="button"
            class="plain"
            aria-label={`Insert a band after ${name.toLowerCase()}`}
            onClick={onInsert}
          >
            Insert
          </button>
          {onRemove && (
            <button type="button" class="plain" aria-label={`Remove ${name.toLowerCase()}`} onClick={onRemove}>
              Remove
            </button>
          )}
        </td>
      </tr>
      <CellFaults path={path} columns={6} />
      {fall && (
        <tr class="cell-faults">
          <td colSpan={6} class="small">
            <strong>The fee falls here,</strong> from {formatMoney(fall.from)} just below {formatMoney(fall.at)} to{' '}
            {formatMoney(fall.to)}: a higher price can cost less in total. Check that the venue’s fees say so.
          </td>
        </tr>
      )}
    </tbody>
  );
}
