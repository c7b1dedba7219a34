import type { ComponentChildren } from 'preact';
import type { Line } from '../../../src/domain/deal/price-breakdown.ts';
import { formatMoney } from '../../../src/domain/money/format-money.ts';
import { FACTOR_UNIT, PPM } from '../../../src/domain/money/rate.ts';
import type { Worksheet } from '../../../src/domain/worksheet/worksheet-of.ts';
import { bandWords } from './band-words.ts';
import { keptBackWords } from './kept-back-words.ts';

/** What a step of the walk is worked out from, in words; null where there is nothing more to say. */
export function inputsBehind(line: Line, sheet: Worksheet): ComponentChildren | null {
  const { deal } = sheet;
  const at = sheet.result.breakdown;
  switch (line.group) {
    case 'title':
      return `This title brings ${percent(deal.titleKeeps / PPM)} of a clean car’s retail of ${formatMoney(deal.retail)}.`;
    case 'ceiling':
      return ceilingWords(sheet);
    case 'recon':
      return line.range === undefined
        ? 'Used as entered.'
        : 'Average: (low + 4 × likely + high) ÷ 6, times the chance it is needed. Repairs run over more often than under.';
    case 'doubt':
      return 'What the car loses if the statement is false, times the chance that it is false; all of it once it is refuted.';
    case 'transport':
      return 'The lot’s own quote if it has one, otherwise the venue’s rule in Setup.';
    case 'pack':
    case 'overhead':
    case 'selling':
      return 'Your standard cost, from Setup › Costs.';
    case 'charge':
      return 'A fixed charge from the venue’s fee schedule, in Setup › Buy fees.';
    case 'fee': {
      const table = deal.fees[Number(line.key.split('-')[1])];
      return table === undefined ? null : bandWords(table, at.price);
    }
    case 'interest':
      return (
        `${formatMoney(at.financed)} on the floor plan, at ${percent(deal.funding.floorFactor / FACTOR_UNIT)} of it ` +
        'expected until it sells, curtailments included.'
      );
    case 'own-cash':
      return (
        `${formatMoney(at.cash)} of your own cash is tied up (recon included), at ` +
        `${percent(deal.funding.cashFactor / FACTOR_UNIT)} of it expected until it sells.`
      );
    case 'holding':
      return 'Expected days to sell times your daily cost of lot space, plus the lender’s fee for the car.';
    case 'undone':
      return `${percent(deal.unwind.chance / PPM)} of wins are canceled, by your own figure in Setup.`;
    case 'required-profit':
      return (
        `The largest of three: ${formatMoney(deal.rule.dollars)}; ${percent(deal.rule.shareOfRetail / PPM)} of retail; ` +
        `${percent(deal.rule.perCash / FACTOR_UNIT)} of the own cash it ties up.`
      );
    case 'haircut-cost':
      return 'What your own results showed when this was switched on. The Learn screen has the cases behind it.';
    case 'slack':
    case 'risk-cap':
    case 'sealed':
      return keptBackWords(line.group);
    default:
      return null;
  }
}

function ceilingWords({ appraisal: { retail } }: Worksheet): string | null {
  const lowest = retail?.ceilings.find((one) => one.lowest);
  if (retail === undefined || lowest === undefined) return null;
  return (
    `Nobody pays more than ${formatMoney(lowest.cap)} when that buys ${lowest.ceiling.label}. A car that might have ` +
    `sold for more brings that much; one that sells for less still does. The average is ${formatMoney(retail.mean)}.`
  );
}

const percent = (share: number) => `${(share * 100).toLocaleString('en-US', { maximumFractionDigits: 3 })}%`;
