import type { FeeTable } from '../../../src/domain/fees/fee-schedule.ts';
import { formatMoney } from '../../../src/domain/money/format-money.ts';
import { PPM } from '../../../src/domain/money/rate.ts';

/** The band of a fee table that a price falls into, and what it asks for. */
export function bandWords(table: FeeTable, price: number): string {
  const index = table.bands.findLastIndex((band) => band.fromCents <= price);
  const band = table.bands[index];
  if (band === undefined) return '';
  const next = table.bands[index + 1];
  const span = next
    ? `From ${formatMoney(band.fromCents)} and below ${formatMoney(next.fromCents)}`
    : `From ${formatMoney(band.fromCents)} upward`;
  const parts = [
    band.flatCents > 0 && formatMoney(band.flatCents),
    band.ratePpm > 0 && `${percent(band.ratePpm / PPM)} of the hammer price`,
  ].filter(Boolean);
  const limits = [
    band.minimumCents !== undefined && `at least ${formatMoney(band.minimumCents)}`,
    band.maximumCents !== undefined && `at most ${formatMoney(band.maximumCents)}`,
  ].filter(Boolean);
  return `${span}: ${parts.join(' and ') || 'nothing'}${limits.length > 0 ? `, ${limits.join(', ')}` : ''}.`;
}

const percent = (share: number) => `${(share * 100).toLocaleString('en-US', { maximumFractionDigits: 3 })}%`;
