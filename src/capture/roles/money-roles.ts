import type { RoleRule } from './role-words.ts';

/** What an amount on a lot's page can be. `other` is everything that is none of the four, and must not be taken for one. */
export type MoneyRole = 'priceNow' | 'nextBid' | 'increment' | 'buyNow' | 'price' | 'other';

const rule = (role: MoneyRole, weight: number, words: RegExp): RoleRule<MoneyRole> => ({ role, weight, words });

/**
 * The words of a label, a column's head, or those that stand around an amount in a line. From general to particular; a
 * particular rule outweighs the general ones that it contradicts. The trade's words and everyday ones, in English, French,
 * Spanish and German.
 */
export const MONEY_LABELS: readonly RoleRule<MoneyRole>[] = [
  // What nobody pays for the lot now.
  rule(
    'other',
    1,
    /\b(?:reserve|floor|msrp|sticker|retail\w*|list(?:ed)? new|new price|price new|when new|for it new|book|guide|market|wholesale|trade[- ]in value|loan|payoff|owed|balance|estimate\w*|est\.|appraisal|apprais\w*|value\w*|worth|guess|insured?|replacement)\b/,
  ),
  rule(
    'other',
    1,
    /\b(?:fees?|premium|deposit|escrow|transport\w*|ship\w*|freight|haul(?:ing|ed|age)?\b|delivery|deliver\w*|tow(?:ing)?|storage|gate|doc(?:ument)?s?|tax(?:es)?|gst|hst|qst|duty|total|subtotal|all[- ]in|out the door|due|pay(?:ment|able)?s?|monthly|per month|a month|\/ ?mo|apr|finance\w*|floor[- ]?plan|curtailment|savings?|you save|save|credit|limit|line|purchasing power|refund\w*|coupon|rebate|back)\b/,
  ),
  rule(
    'other',
    1,
    /\b(?:start(?:s|ed|ing)?|open(?:s|ed|ing)?|first|minimum|min\.?)\b.{0,14}\b(?:bids?|prices?|offers?|amount|at)\b|^(?:start|starts|started|starting|opened|opening|opens|start price|min|minimum|begins?)\b(?: at)?:?$|\b(?:bidding )?(?:opened|started|began|opens|starts) at$|\b(?:start|starting|opening)(?: bid)? (?:is|at|of)$/,
  ),
  rule(
    'other',
    1,
    /\b(?:your|my|our) (?:\w+ )?(?:max(?:imum)?|bid|proxy|limit|offer|price|ceiling)\b|\b(?:max(?:imum)?|proxy|auto ?bid|absentee)\b/,
  ),
  rule(
    'other',
    1,
    /\b(?:sold|final|hammer(?:ed)?(?: price| at)?|closed at|went for|go(?:t|es) for|brought|made|took in|fetched|winning|won|no[- ]sale|last (?:week|sale|year|month|time|run|sat\w*|one)|previous(?:ly)?|prior|earlier|before that|history|average|avg|best (?:a|of)|record|comparable|comps?|similar|yesterday)\b/,
  ),
  rule(
    'other',
    1,
    /\b(?:repair\w*|recon\w*|damage|parts|labor|cost(?:s)? (?:of|to)|quote[sd]?|invoice\w*|warranty|service|spent|paid|bought|asking price new|was|wanted|instead of|off|discount|up to|over|under|less|more) ?$/,
  ),
  rule(
    'other',
    0.95,
    /\b(?:mise à prix|prix de (?:réserve|départ)|frais|dépôt|precio (?:inicial|de reserva|de salida)|tarifas?|depósito|startpreis|startgebot|mindestpreis|gebühr\w*|kaution|estimation|valeur|estimado)\b/,
  ),
  // The bid that stands.
  rule(
    'priceNow',
    0.95,
    /\b(?:current|standing|present|leading|live|latest)\b.{0,12}\b(?:bid|offer|price|amount)\b|\b(?:high|highest|hi|top|best)(?:est)?[ -]?(?:current )?(?:bid|offer|price)\b|(?<!\b(?:next|minimum|min|least|required) )\bbid (?:now|stands|is)\b|\bprice now\b/,
  ),
  rule(
    'priceNow',
    0.9,
    /\b(?:stands?|standing|sits?|sitting|rests?|resting|now|lot \w{1,8} (?:is|stands))(?: now)? at$|\b(?:is|it's|now) at$|\bbidding (?:is|stands|has reached|sits)(?: now)?(?: at)?$|\b(?:money|cash) (?:on (?:it|the)|in|now|so far)\b|\b(?:best|top|high) so far\b|\bso far\b|\bgoing at\b|\b(?:somebody|someone|a dealer|a buyer) (?:has )?(?:bid|offered)$|\bhas bid$|\bbid to$/,
  ),
  rule(
    'priceNow',
    0.9,
    /\b(?:oferta|puja) (?:actual|más alta)|\bprecio actual|\b(?:enchère|mise|offre) (?:actuelle|courante|la plus (?:haute|élevée))|\bplus haute (?:enchère|mise|offre)|\bprix actuel|\baktuelles gebot|\bhöchstgebot|\baktueller preis/,
  ),
  rule(
    'priceNow',
    0.8,
    /^(?:high|hi|top|current|now|standing|stands at|leading|leader|bid at|current at|now at)\b:?$|^(?:bid|bids? ?(?:now|in|high)|hi(?:gh)? ?bid|enchère|mise|gebot|puja|oferta)$|\bbid(?: price| amount)?$/,
  ),
  rule(
    'priceNow',
    0.9,
    /\b(?:we|i|they) (?:now )?have(?: a bid of)?$|\b(?:holding|sitting|stuck) (?:at|on)$|\bmoney (?:is )?at$/,
  ),
  rule('nextBid', 0.95, /\b(?:and|we|now|but) (?:now )?want$|\bit takes$|\btakes(?: at least)?$/),
  rule('price', 0.7, /^(?:price|asking price|sale price|precio|prix|preis|bid|offer)$|\bprice$/),
  // What comes next.
  rule(
    'nextBid',
    0.97,
    /\b(?:next|asking|ask|least|lowest acceptable|required|needed|valid)\b.{0,16}\b(?:bid|offer|amount|ask|price|call)\b|\b(?:next|minimum|min\.?)(?: acceptable| valid| required)? (?:bid|offer) (?:has to be|is|now|must be)?|\b(?:least|minimum)\b.{0,14}\b(?:you|may|can|to) .{0,8}bid|\byou (?:can|may|must|need to|have to) bid\b|\bbid at least\b|\bto (?:lead|beat|take the lead|go ahead)\b|\b(?:now|is) (?:wanted|asked|wanting|looking for)\b|\b(?:wanted|asking|ask|asks|looking for|next)(?: is| now)?:?$|^(?:next|ask|asking|wanted|want|now wanted|call)\b/,
  ),
  rule(
    'nextBid',
    0.95,
    /\b(?:siguiente|próxima) (?:oferta|puja)|\b(?:prochaine (?:enchère|mise|offre)|enchère suivante|mise minimale suivante)|\bnächstes gebot/,
  ),
  rule('nextBid', 0.9, /\bplace (?:a |your )?bid(?: of| at)?$|\b(?:minimum|min\.?) (?:to )?bid\b|\bnext minimum\b/),
  // The step.
  rule(
    'increment',
    1,
    /\b(?:increments?|incr?|bid steps?|steps?(?: of)?|raises?(?: by)?|minimum raise|bump|jumps? of|goes up by|up by|by steps|in steps|(?:bids?|it|they|price|amount)(?: \w+)? (?:move|go|rise|step|jump|climb)e?s?(?: up)?(?: by| in)?|incremento|palier|pas d['’]enchère|schritt|gebotsschritt|erhöhung)\b/,
  ),
  // At once.
  rule(
    'buyNow',
    1,
    /\b(?:buy|purchase|take|own|have|get)[ -]?(?:it |this |the lot |her |him )?(?:now|today|outright|at once|right now|instantly|immediately|home now)\b|\b(?:instant|immediate|fixed|outright|straight) (?:purchase|price|buy|sale)\b|\bbuy ?out\b|\bend it(?: now)? (?:for|at)\b|\blet (?:it|her|him) go\b|\b(?:or|to) (?:buy|own) (?:it )?(?:now|outright|at)\b|\bends? the (?:sale|bidding)(?: now)? (?:for|at)\b|\bno[- ]wait price\b|\bbuy price\b|^buy$|\btake it (?:for|at)\b|^bin\b/,
  ),
  rule(
    'buyNow',
    1,
    /\b(?:compr(?:ar|e|a|ela|elo)(?: ya| ahora)|cómpr[ae]lo ya|compra inmediata|achat immédiat|acheter maintenant|sofort ?kauf(?:en|preis)?|sofortpreis)\b/,
  ),
];

/** Words that stand behind an amount: "$8,475 is bid", "$15,900 or buy now". */
export const MONEY_AFTER: readonly RoleRule<MoneyRole>[] = [
  rule(
    'other',
    1,
    /^(?:\/|per|a|an) ?(?:month|mo|mile|day|week|year|car|unit|hour|gallon)\b|^(?:fees?|premium|deposit|reserve|retail|msrp|off|back|to (?:ship|haul|transport|deliver)|in fees|shipping|transport|last|opening|starting|start|to start|to open|less|discount|savings?|credit|each|for (?:it )?new|new|sold|floor|online|hammer|no sale|by paddle|by bidder|for two|for three|on (?:monday|tuesday|wednesday|thursday|friday)\b)/,
  ),
  rule(
    'priceNow',
    0.9,
    /^(?:is the (?:bid|price|offer) to beat|to beat|is (?:the )?(?:high|top|leading|best|standing|current)|aktuelles|meilleure|mise (?:actuelle|en cours)|puja actual|oferta actual|is bid|is in|in\b|bid\b|(?:current|high|top|leading|best|standing|hi)(?:est)? ?(?:bid|offer|price)?\b|so far|best bid|now\b|on it|offered|has been bid|from (?:user|bidder|dealer|paddle))/,
  ),
  rule(
    'nextBid',
    0.95,
    /^(?:to be next|to (?:top|pass|outbid)|will (?:lead|do it)|is wanted|wanted|is asked|asked|asking|or (?:more|higher|above|better)|and up|next\b|is next|to lead|minimum\b|or over|needed)/,
  ),
  rule('buyNow', 1, /^(?:or buy|buy (?:it )?now|to buy|buys it|outright|takes it|and it'?s yours|ends it|buy)/),
  rule('increment', 1, /^(?:steps?|increments?|raises?|at a time|bumps?)\b/),
];
