/** A page of an invented sale, as its server would write it now. */
export interface SalePage {
  readonly price: number;
  readonly closes: Date;
  /** What the sale calls the odometer; the reader takes "Cluster" for something else. */
  readonly odometerLabel?: string;
  readonly extra?: string;
}

export const SALE_VIN = '5ZXB38E89ME487234';

export function salePage({ price, closes, odometerLabel = 'Odometer', extra = '' }: SalePage): string {
  const figure = price.toLocaleString('en-US');
  return `<!doctype html><html lang="en"><head><title>Lot 1184</title></head><body>
<main><h1>2021 Larkspur Hauler 250 Crew Cab</h1>
<dl><dt>Lot</dt><dd>1184</dd><dt>VIN</dt><dd>${SALE_VIN}</dd>
<dt>${odometerLabel}</dt><dd id="clock-reading">45,210</dd>
<dt>Title status</dt><dd>Clean</dd><dt>Current bid</dt><dd>$${figure}</dd>
<dt>Bidding ends</dt><dd><time datetime="${closes.toISOString()}">${closes.toISOString()}</time></dd></dl>
</main>${extra}</body></html>`;
}
