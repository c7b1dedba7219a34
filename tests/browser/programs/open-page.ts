/** Two bids under two names, and a close without a zone. */
export function openPage(closes: Date): string {
  const day = closes.toLocaleDateString('en-US', { month: 'long', day: 'numeric', year: 'numeric' });
  return `<!doctype html><html lang="en"><head><title>Lot 7</title></head><body><main><h1>2021 Larkspur Hauler 250</h1>
<dl><dt>VIN</dt><dd>4XZHBHL16NT397109</dd><dt>Current bid</dt><dd>$12,400</dd><dt>High bid</dt><dd>$13,900</dd>
<dt>Bidding ends</dt><dd>${day} 2:00 PM</dd></dl></main></body></html>`;
}

export const PAGE_WITHOUT_LOT = `<!doctype html><html lang="en"><head><title>Yard</title></head>
<body><h1>Opening hours</h1><p>Weekdays from nine to five.</p></body></html>`;
