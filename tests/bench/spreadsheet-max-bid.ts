import { HyperFormula } from 'hyperformula';
import type { Deal } from '../../src/domain/deal/deal.ts';
import { FACTOR_UNIT } from '../../src/domain/money/rate.ts';

/** A worksheet kept open: put a lot's figures in, read its max bid. */
export interface MaxBidSheet {
  /** Whole cents; null when the lowest price does not pay. */
  readonly maxBidOf: (deal: Deal) => number | null;
  readonly close: () => void;
}

/**
 * The rival: what a buyer builds in a spreadsheet, computed by a spreadsheet engine. One row for each price he could
 * bid; the fees of each table by approximate VLOOKUP; all-in, cash, holding cost and what is left in a column each; and
 * the last price before the first one that does not pay. In whole cents, so that both sides give the same answer.
 *
 * It is spared what it need not do: the sheet is built and parsed once, outside the timing; the rows end at the dearest
 * lot; only a lot's own figures are written, in one batch; and floor plan, profit shares and undone sales, which ours
 * always allows for, are left out.
 */
export function maxBidSheet(example: Deal, dearest: number): MaxBidSheet {
  const engine = HyperFormula.buildEmpty({ licenseKey: 'gpl-v3', maxRows: 20_000 });
  engine.addSheet('Fees');
  engine.addSheet('Lot');
  const fees = sheetId(engine, 'Fees');
  const lot = sheetId(engine, 'Lot');
  const bandRows = Math.max(...example.fees.map((table) => table.bands.length));
  engine.setCellContents(
    { sheet: fees, row: 0, col: 0 },
    Array.from({ length: bandRows }, (_, i) =>
      example.fees.flatMap(({ bands }) => {
        const band = bands[i];
        if (band === undefined) return [null, null, null, null, null];
        const { fromCents, flatCents, ratePpm, minimumCents = 0, maximumCents = 1e12 } = band;
        return [fromCents, flatCents, ratePpm / 1e6, minimumCents, maximumCents];
      }),
    ),
  );
  const step = example.increments[0]?.stepCents ?? 2500;
  const rows = Math.floor(dearest / step) + 2;
  engine.setCellContents(
    { sheet: lot, row: 0, col: 0 },
    Array.from({ length: rows }, (_, i) => priceRow(example, i + 1, i * step)),
  );
  engine.setCellContents({ sheet: lot, row: 0, col: RESULT_COLUMN }, [
    [`=MATCH(0,H1:H${rows},0)`],
    [`=IF(K1=1,"none",INDEX(A1:A${rows},K1-1))`],
  ]);
  return {
    maxBidOf(deal) {
      engine.batch(() => engine.setCellContents({ sheet: lot, row: 0, col: INPUT_COLUMN }, inputsOf(deal)));
      const value = engine.getCellValue({ sheet: lot, row: 1, col: RESULT_COLUMN });
      if (value === 'none') return null;
      if (typeof value !== 'number') throw new Error(`the sheet answered ${String(value)}`);
      return value;
    },
    close: () => engine.destroy(),
  };
}

const INPUT_COLUMN = 8;
const RESULT_COLUMN = 10;

/** Price, a fee a table, all-in, cash, holding cost, what is left, and whether that is enough. */
function priceRow(deal: Deal, row: number, price: number): (string | number)[] {
  const [first = '0', second = '0'] = deal.fees.map(({ bands }, t) => feeFormula(row, t, bands.length));
  return [
    price,
    `=${first}`,
    `=${second}`,
    `=A${row}+B${row}+C${row}+I$3+I$4`,
    `=D${row}+I$2`,
    `=ROUND(E${row}*I$6,0)`,
    `=I$1-I$2-I$5-D${row}-F${row}-I$7`,
    `=IF(G${row}>=0,1,0)`,
  ];
}

function feeFormula(row: number, table: number, bands: number): string {
  const column = (offset: number) => String.fromCharCode(65 + table * 5 + offset);
  const range = `Fees!$${column(0)}$1:$${column(4)}$${bands}`;
  const part = (index: number) => `VLOOKUP(A${row},${range},${index},TRUE())`;
  return `MIN(MAX(${part(2)}+ROUND(A${row}*${part(3)},0),${part(4)}),${part(5)})`;
}

/** Column I from its first row: retail after the title, recon, transport, charges, other costs, price of cash, least profit. */
function inputsOf(deal: Deal): number[][] {
  const sum = (...kinds: string[]) =>
    deal.costs.reduce((total, line) => total + (kinds.includes(line.kind) ? line.cents : 0), 0);
  const charges = deal.charges.reduce((total, charge) => total + charge.cents, 0);
  return [
    Math.round((deal.retail * deal.titleKeeps) / 1e6),
    sum('recon'),
    sum('transport'),
    charges,
    sum('pack', 'overhead', 'selling', 'doubt'),
    deal.funding.cashFactor / FACTOR_UNIT,
    deal.rule.dollars,
  ].map((value) => [value]);
}

function sheetId(engine: HyperFormula, name: string): number {
  const id = engine.getSheetId(name);
  if (id === undefined) throw new Error(`the engine has no sheet ${name}`);
  return id;
}
