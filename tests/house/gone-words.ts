/** A wording that is gone, what is said instead, and a text in which it would be found. */
export interface GoneWord {
  readonly pattern: RegExp;
  readonly say: string;
  readonly found: string;
}

const gone = (pattern: RegExp, say: string, found: string): GoneWord => ({ pattern, say, found });

/** One word for one thing: what users and documents no longer say. Each row was read twice by somebody before it went. */
export const GONE_WORDS: readonly GoneWord[] = [
  gone(/\bprice lists?\b/i, 'fee schedule; for an edition, “rates from DATE”', 'Remove this price list'),
  gone(
    /\b(?:call (?:me|you) (?:again|before|at|when)|calls? (?:before|ahead|for this|are planned|is planned|is due)|no (?:more )?calls?\b|be called (?:at|when)|you are called)/i,
    'reminder',
    'No more calls are planned for this lot.',
  ),
  gone(/\b(?:your|the) rush\b|\brush (?:day|band)s?\b/i, 'busy hours', 'no proxy, in your rush'),
  gone(/\bpast (?:your|our|the) (?:stop|max|price)|\d+ past\b|\blet it go\b/i, 'over max', '$100 past your stop'),
  gone(
    /\b(?:is|are|was|were|be) (?:not )?kept\b|\bnothing (?:was|is) kept\b|^kept\b|: kept\b|\bnot kept yet\b/i,
    'saved',
    'The year is kept.',
  ),
  gone(/\b(?:take[ns]?|took) (?:it |them |this |that )?(?:all )?back\b/i, 'undo', 'Take back'),
  gone(/\bnot said\b/i, 'Not set', 'Not said (taken as clean)'),
  gone(
    /\b(?:sale|purchase|win|car)s? (?:that )?(?:is |was |were |comes? )?undone\b|\bcomes? undone\b|\bundid\b/i,
    'canceled',
    'Sale undone',
  ),
  gone(/\bwhole life\b|\blot’s life\b/i, 'Full history', 'Its whole life'),
  gone(/\d %/, 'no blank before the percent sign', 'about 25 % of retail'),
  gone(
    /\b(?:\w*recogni[sz]e?|organi[sz]e?|summari[sz]e?)s(?:e|ed|es|ing)\b|\brecognis|\borganis|\blabell|\bkilometre|\bcolour|\bfavour|\bcancell(?:ed|ing)\b|\bgrey\b|\bcentre\b|\bcheque\b|\btyres?\b|\bwhilst\b|\bneighbour|\banalys(?:e|ed|ing)\b/i,
    'American spelling',
    'labelled late',
  ),
  gone(
    /\bno price pa(?:ys|id)\b|\bstill have paid\b/i,
    'Don’t bid; not worth bidding; lost below our max',
    'No price pays.',
  ),
  gone(/\bdear(?:er|est)?\b/i, 'higher, too expensive', 'Far too dear'),
  gone(
    /\bless than nothing\b|\bmore than nothing\b|\bat nothing\b/i,
    'above $0, below $0',
    'A bid is more than nothing.',
  ),
  gone(/\btaken (?:for granted|as clean|as true)\b/i, 'assumed', 'Taken for granted: no floor plan.'),
  gone(/\bparticulars\b/i, 'details', 'Particulars'),
  gone(/\bleast (?:profit|share|return)\b/i, 'minimum', 'Least profit on a car'),
  gone(
    /\b(?:price of (?:your )?own cash|place on the lot)\b/i,
    'cost of own cash; lot space',
    'Price of your own cash',
  ),
  gone(/\banother’s\b|\bby another\b(?! entry| name| tab)/i, 'against us; by someone else', 'Another’s claim'),
  gone(/\bwritten anew\b|\bbegins anew\b|\bworked out anew\b/i, 'rewritten; again', 'The journal was written anew.'),
  gone(/\bbrought up to date\b/i, 'updated', 'Brought up to date from this page.'),
  gone(/\binvented (?:row|example|invoice)\b/i, 'made-up', 'Try it with an invented row'),
  gone(
    /\bno longer watched\b|\bwatched (?:already|now)\b/i,
    'on your list; removed from your list',
    'It is watched now.',
  ),
  gone(/\bto come back\b|\bmoney back\b|\bcame back\b/i, 'refund', 'To come back'),
  gone(/\bempty means\b|^empty:/i, 'Leave blank', 'Empty means now'),
  gone(
    /\bSay (?:what|when|which|how|where|in a sentence|by how much|until|so)\b/,
    'Enter …, Choose …',
    'Say when it closes',
  ),
];

/** A text that may stay although a pattern finds it: where it is, how it begins, and why. */
export interface Allowed {
  readonly path: string;
  readonly begins: string;
  readonly why: string;
}

export const ALLOWED: readonly Allowed[] = [
  { path: 'src/domain/calendar/calendar-event.ts', begins: 'CANCELLED', why: 'the word of RFC 5545' },
  { path: 'src/domain/calendar/closing-event.ts', begins: 'CANCELLED', why: 'the word of RFC 5545' },
  { path: 'src/capture/roles/label-list.ts', begins: '', why: 'what pages say is read in every spelling' },
  {
    path: 'src/intake/columns/column-fields.ts',
    begins: 'kilometres; km;',
    why: 'headings are read in every spelling',
  },
];

export const isAllowed = (path: string, text: string): boolean =>
  ALLOWED.some((each) => each.path === path && text.startsWith(each.begins));
