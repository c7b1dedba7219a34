export const USAGE = 'npm run worksheet -- LOTS.csv --setup SETUP.json [--json]';

export const HELP = `Works out the max bid of every lot in a table.

  ${USAGE}

  LOTS.csv       a table of lots with headings such as VIN, Venue, Closes, Price now, Retail, Recon, Title, Transport;
                 a single - reads it from standard input
  --setup FILE   a setup file, as the Setup screen saves it; its fields are described in manifest/setup.schema.json
  --json         a JSON array in place of the table, one object per row, in the order of the file
  --             must stand before the options, or npm takes them for its own
  --help         this text

Money in the JSON is in dollars, as numbers with at most two decimals, each exact to the cent; factors are per dollar.
Each object has these keys, null or empty where there is no value:

  row, vin, car, lotNumber, venue, closes (UTC), priceNow
  maxBid           the most to enter as a proxy; null when no price meets your rules, or something is missing
  limitedBy        why it is not one increment more: least-dollars, least-share, least-return, loss-chance, sealed or
                   nothing-pays
  headroom         maxBid less priceNow
  goOn             how far you can go on from the next bid; differs from maxBid only above a price at which a fee falls
  expectedProfit, requiredProfit, slack, allIn (hammer, fees, charges, transport), fees, cash (own cash, recon
                   included), financed, funding (floor or cash): at the max bid, or at a price of 0 when maxBid is null
  accepted         every price that meets your rules, as intervals {low, high} on the bid increments
  cliffs           prices near the max bid at which the fees jump {edge, before, at, step, extraFee}
  holdFactors      {floorFactor, cashFactor, flatHold, expectedDays}
  lines            the sum, line by line {key, label, amount, low, high}; the amounts add up to maxBid exactly
  assumptions      what was assumed because the row does not say
  cautions         those of them that leave a cost out: free transport
  problems         why there is no max bid: {reason, message}
  faults           what is wrong or in doubt in the row's cells

Problems with a row also go to standard error; the other rows are still worked out. The exit code is 1 when the setup,
the table or the command can't be used, else 0.

A max bid rests on your own figures. The venue's rules decide its fees; estimates can be wrong and money can be lost.
`;
