import { cents } from '../../src/domain/money/cents.ts';
import { formatMoney } from '../../src/domain/money/format-money.ts';
import type { Plan } from '../../src/domain/plan/plan.ts';
import type { PlannedLot } from './planned-lot.ts';

const HEADINGS = [
  'Row',
  'VIN',
  'Car',
  'Closes (UTC)',
  'Max bid',
  'Planned bid',
  'Chance',
  'Cash',
  'Line',
  'Why',
] as const;
const FIGURES: ReadonlySet<number> = new Set([0, 4, 5, 7, 8]);
const LONGEST_CAR = 28;

/** One line a lot in closing order, and below them what the whole plan comes to. */
export function planTable(lots: readonly PlannedLot[], plan: Plan): string {
  const rows = [HEADINGS, ...lots.map(cellsOf)];
  const widths = HEADINGS.map((_, column) => Math.max(...rows.map((row) => [...(row[column] ?? '')].length)));
  const lines = rows.map((row) =>
    row
      .map((cell, i) => (FIGURES.has(i) ? cell.padStart(widths[i] ?? 0) : cell.padEnd(widths[i] ?? 0)))
      .join('  ')
      .trimEnd(),
  );
  return `${[...lines, '', ...summaryOf(plan)].join('\n')}\n`;
}

function cellsOf(lot: PlannedLot): string[] {
  const money = (dollars: number | null) => (dollars === null ? '–' : formatMoney(cents(Math.round(dollars * 100))));
  const car = lot.car ?? '';
  return [
    String(lot.row),
    lot.vin ?? '',
    car.length > LONGEST_CAR ? `${car.slice(0, LONGEST_CAR - 1)}…` : car,
    lot.closes?.slice(0, 16).replace('T', ' ') ?? '',
    money(lot.maxBid),
    money(lot.plannedBid),
    lot.chanceWords === null ? '' : `${lot.chanceWords} (${lot.closings})`,
    money(lot.cash),
    lot.line === 0 ? '–' : money(lot.line),
    lot.sentence,
  ];
}

function summaryOf(plan: Plan): readonly string[] {
  const { profit, bounds, cars, fan, worthOfThousand, worthOfPlace, ifPricesHigher, ifPricesLower } = plan;
  const left = fan.at(-1)?.cash;
  return [
    `Expected: ${cars.toFixed(1)} cars, ${formatMoney(profit, { cents: 'never' })} profit; no way to bid earns more than ${formatMoney(bounds.high, { cents: 'never' })} on average.`,
    ...(left === undefined
      ? []
      : [
          `Cash left at the end: likely ${formatMoney(left.likely)}; one time in ten ${formatMoney(left.worst)} or less.`,
        ]),
    `Another $1,000 of cash is worth ${formatMoney(worthOfThousand, { cents: 'never' })}, one more place ${formatMoney(worthOfPlace, { cents: 'never' })}.`,
    `If prices run 5% higher: ${formatMoney(ifPricesHigher, { cents: 'never' })}; 5% lower: ${formatMoney(ifPricesLower, { cents: 'never' })}.`,
  ];
}
