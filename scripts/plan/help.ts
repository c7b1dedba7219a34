export const USAGE = 'npm run plan -- LOTS.csv --setup SETUP.json --purse PURSE.json [--json]';

export const HELP = `Works out which bids to place so that the purse earns the most.

  ${USAGE}

  LOTS.csv       a table of lots, as for npm run worksheet; a single - reads it from standard input
  --setup FILE   a setup file, as the Setup screen saves it
  --purse FILE   what there is to buy with, as JSON:

    {
      "cashCents": 5000000,            own cash that is free, whole cents
      "lineCents": 3000000,            free on the floor plan's line; leave out where every car is paid from cash
      "places": 6,                     free places on the lot; leave out where there are enough
      "until": "2026-11-29",           the last day the purse is for; leave out for all lots
      "moves": [{ "date": "2026-11-28", "cents": 900000, "places": 1, "what": "blue van sold" }],
                                       money that comes in, or goes out where it is below 0, from a day on
      "reactionMinutes": 3,            closes as near as this can't be reacted to one by one
      "overspendPpm": 0,               the chance you allow that bids standing at one time win more than there is
      "choices": { "VIN": "pinned" },  pinned: hold money for it; skipped: no bid; plan-ignored: its max bid stands
      "closings": [                    how lots like these ended, also the lost ones: 20 at least before cash is rationed
        { "venueId": "ocotillo", "titleId": "clean", "zeroProfitCents": 1180000, "stepCents": 10000,
          "ended": "lost", "priceCents": 1090000, "bidCents": 1050000, "at": "2026-11-21T18:00:00Z" }
      ]
    }

  zeroProfitCents is the hammer price at which the car would have earned you nothing. ended is won, unopposed (won with no
  other bid), lost or not-sold; priceCents is left out where it is unknown, bidCents where you only watched. make, model and
  seller tell lines of cars and kinds of sellers apart where there are closings enough; sealed is true where bids were handed in
  unseen. A closing counts for half after 90 days; without "at" it is of last week.

  --json         a JSON array in place of the table, one object a lot, in closing order; money in dollars:
                 row, vin, car, closes, maxBid, plannedBid, reason, sentence, chance (0 to 1, null where too few closings say
                 anything), chanceWords, closings, cash and line (what it takes at the planned bid), fitsBesideProxies,
                 batch (lots with the same number close too near together), problems
  --             must stand before the options, or npm takes them for its own

What is wrong goes to standard error. The exit code is 1 when the setup, the purse, the table or the command can't be used, else 0.

A plan rests on your own figures and on how past lots ended. In simulated weekends it earns less than bidding the max
everywhere in some of them; estimates can be wrong and money can be lost. You decide, and you bid.
`;
