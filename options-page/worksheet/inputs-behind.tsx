import type { ComponentChildren } from 'preact';
import type { Deal } from '../../src/domain/bid/deal.ts';
import type { Line, PriceBreakdown } from '../../src/domain/bid/price-breakdown.ts';
import type { FeeTable } from '../../src/domain/fees/fee-schedule.ts';
import { formatMoney } from '../../src/domain/money/format-money.ts';
import { FACTOR_UNIT, PPM } from '../../src/domain/money/rate.ts';

/** What a step of the walk is worked out from, in words; null where the step is itself an input. */
export function inputsBehind(line: Line, deal: Deal, at: PriceBreakdown): ComponentChildren | null {
  switch (line.group) {
    case 'title':
      return `The title leaves ${percent(deal.titleKeeps / PPM)} of a clean car’s retail of ${formatMoney(deal.retail)}.`;
    case 'fee': {
      const table = deal.fees[Number(line.key.split('-')[1])];
      return table === undefined ? null : bandWords(table, at.price);
    }
    case 'interest':
      return (
        `${formatMoney(at.financed)} on the floor plan, at ${percent(deal.funding.floorFactor / FACTOR_UNIT)} of it ` +
        'expected over the time it sits, curtailments counted.'
      );
    case 'own-cash':
      return (
        `${formatMoney(at.cash)} of your own cash is tied up (recon counted), at ` +
        `${percent(deal.funding.cashFactor / FACTOR_UNIT)} of it expected over the time it sits.`
      );
    case 'undone':
      return `${percent(deal.unwind.chance / PPM)} of wins come undone, by your own figure in Setup.`;
    case 'required-profit':
      return (
        `The largest of three: ${formatMoney(deal.rule.dollars)}; ${percent(deal.rule.shareOfRetail / PPM)} of retail; ` +
        `${percent(deal.rule.perCash / FACTOR_UNIT)} of the own cash it ties up.`
      );
    case 'slack':
      return 'What is left because the sale moves in steps: one step more would not meet the least profit.';
    default:
      return null;
  }
}

function bandWords(table: FeeTable, price: number): string {
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

const percent = (share: number) => `${(share * 100).toLocaleString('en-US', { maximumFractionDigits: 3 })} %`;
