import type { LotField } from '../../domain/lot/lot.ts';

/** Something a column of a table can hold. */
export interface ColumnField {
  readonly id: string;
  /** As the mapping shows it, and as the tool's own files head the column. */
  readonly label: string;
  /** Other headings that say the same, separated by "; ": case, blanks and punctuation do not matter. */
  readonly words: string;
  /** How a cell is read, in a sentence for the user. */
  readonly how: string;
  readonly example: string;
  /** The facts of a lot that come out of it, alone or together with other columns. */
  readonly fills: readonly LotField[];
  /** Whether several columns may hold it; they are then kept one under the other. */
  readonly many?: true;
}

const ESTIMATE = 'An amount; low and high are read as one in ten below and one in ten above.';

/** Everything a table of lots can hold, in the order in which the tool's own files have it. */
export const COLUMN_FIELDS = [
  {
    id: 'vin',
    label: 'VIN',
    words: 'vin number; vin no; full vin; vehicle identification number; vehicle id; serial; serial number',
    how: '17 characters; blanks, dashes and lower case do not matter. A wrong check digit is shown, not repaired.',
    example: '1ZL3H4C21M0104471',
    fills: ['vin'],
  },
  {
    id: 'year',
    label: 'Year',
    words: 'model year; yr; my; car year; vehicle year',
    how: 'A model year, with four digits or two.',
    example: '2021',
    fills: ['year'],
  },
  {
    id: 'make',
    label: 'Make',
    words: 'manufacturer; brand; maker; vehicle make',
    how: 'Kept as written.',
    example: 'Larkspur',
    fills: ['make'],
  },
  {
    id: 'model',
    label: 'Model',
    words: 'model name; vehicle model',
    how: 'Kept as written.',
    example: 'Hauler 250',
    fills: ['model'],
  },
  {
    id: 'trim',
    label: 'Trim',
    words: 'trim level; version; style; series; body; body style; submodel',
    how: 'Kept as written.',
    example: 'Crew',
    fills: ['trim'],
  },
  {
    id: 'car',
    label: 'Year, make and model',
    words: 'car; vehicle; unit; year make model; year make model trim; ymm; ymmt; vehicle description; car name',
    how: 'The year, then one word of make, then the model.',
    example: '2021 Larkspur Hauler 250',
    fills: ['year', 'make', 'model'],
  },
  {
    id: 'miles',
    label: 'Miles',
    words: 'odometer; odo; mileage; mi; odometer reading; odometer miles; odometer mi; mileage mi; current mileage',
    how: 'Whole miles; "72k" and "116,000 km" are read too.',
    example: '45,210',
    fills: ['miles'],
  },
  {
    id: 'kilometres',
    label: 'Kilometres',
    words: 'kilometers; km; kms; odometer km; mileage km; kilometrage',
    how: 'Turned into miles, 1.609344 km to the mile.',
    example: '116,000',
    fills: ['miles'],
  },
  {
    id: 'lotNumber',
    label: 'Lot number',
    words: 'lot; lot no; lot num; lot id; run; run no; run number; run order; item; item no; item number; lane run',
    how: 'Kept as written.',
    example: '214',
    fills: ['lotNumber'],
  },
  {
    id: 'venue',
    label: 'Venue',
    words: 'auction; auction house; auction name; sold at; offered at; sale site; site; place of sale; venue name',
    how: 'A venue of your setup by its name; another name is kept as written, with a question.',
    example: 'Saguaro Flats',
    fills: ['venueId', 'venueName'],
  },
  {
    id: 'sale',
    label: 'Sale',
    words: 'sale name; event; event name; sale id; auction event',
    how: 'Kept as written.',
    example: 'Fleet Saturday',
    fills: ['sale'],
  },
  {
    id: 'seller',
    label: 'Seller',
    words: 'seller name; sold by; consignor; consigned by; vendor; owner',
    how: 'Kept as written.',
    example: 'a utility fleet',
    fills: ['seller'],
  },
  {
    id: 'location',
    label: 'Location',
    words: 'located; where; yard; city; city state; pickup; pickup location; vehicle location; lot location; facility',
    how: 'Kept as written.',
    example: 'North yard',
    fills: ['location'],
  },
  {
    id: 'closes',
    label: 'Closes',
    words:
      'close; closing; ends; end; ending; closes at; ends at; closes on; close date time; closing date time; end date time; end time date; date time; close at; bidding ends; bidding closes; auction ends; auction end',
    how: 'Date and time, with a zone if it has one; otherwise the venue’s zone holds, then the store’s.',
    example: '11/28/2026 2:05 PM ET',
    fills: ['close'],
  },
  {
    id: 'closeDate',
    label: 'Close date',
    words: 'closing date; end date; date; sale date; auction date; ends on; date closes; date of sale',
    how: 'A date; the time stands in a column of its own.',
    example: '11/28/2026',
    fills: ['close'],
  },
  {
    id: 'closeTime',
    label: 'Close time',
    words: 'closing time; end time; time; sale time; auction time; start of close; time closes',
    how: 'A time of day; the date stands in a column of its own.',
    example: '2:05 PM',
    fills: ['close'],
  },
  {
    id: 'zone',
    label: 'Zone',
    words: 'time zone; timezone; tz; zone name; close zone',
    how: 'The zone of the close, such as America/New_York, or letters such as ET.',
    example: 'America/New_York',
    fills: ['close'],
  },
  {
    id: 'closesUtc',
    label: 'Closes (UTC)',
    words: 'close utc; ends utc; utc; close time utc; end time utc; closing time utc',
    how: 'The same moment in UTC; it settles a close that could mean two.',
    example: '2026-11-28T19:05:00Z',
    fills: ['close'],
  },
  {
    id: 'priceNow',
    label: 'Price now',
    words: 'current bid; current price; high bid; highest bid; bid; bid now; standing bid; current; last bid; now at',
    how: 'The bid that stands, not the next one.',
    example: '9,500',
    fills: ['priceNow'],
  },
  {
    id: 'increment',
    label: 'Increment',
    words: 'bid increment; step; bid step; bid steps',
    how: 'The lot’s own step, where it differs from the venue’s.',
    example: '100',
    fills: ['increment'],
  },
  {
    id: 'retailLow',
    label: 'Retail low',
    words: 'low retail; retail min; retail from',
    how: ESTIMATE,
    example: '16,500',
    fills: ['retail'],
  },
  {
    id: 'retailLikely',
    label: 'Retail likely',
    words:
      'retail; likely retail; expected retail; retail value; retail price; retail estimate; est retail; retail mid',
    how: ESTIMATE,
    example: '18,000',
    fills: ['retail'],
  },
  {
    id: 'retailHigh',
    label: 'Retail high',
    words: 'high retail; retail max; retail to',
    how: ESTIMATE,
    example: '19,800',
    fills: ['retail'],
  },
  {
    id: 'reconLow',
    label: 'Recon low',
    words: 'low recon; recon min; reconditioning low',
    how: ESTIMATE,
    example: '600',
    fills: ['recon'],
  },
  {
    id: 'reconLikely',
    label: 'Recon likely',
    words:
      'recon; reconditioning; likely recon; recon cost; recon estimate; est recon; repairs; repair cost; recon mid',
    how: ESTIMATE,
    example: '900',
    fills: ['recon'],
  },
  {
    id: 'reconHigh',
    label: 'Recon high',
    words: 'high recon; recon max; reconditioning high',
    how: ESTIMATE,
    example: '1,800',
    fills: ['recon'],
  },
  {
    id: 'title',
    label: 'Title',
    words: 'title brand; title status; title state; brand title; title type; title condition',
    how: 'A title state of your setup by its name; another wording is kept in the notes, with a question.',
    example: 'Clean',
    fills: ['titleId'],
  },
  {
    id: 'transport',
    label: 'Transport',
    words: 'transport quote; transport cost; shipping; shipping cost; delivery; freight; haul; hauling; freight in',
    how: 'A quote for bringing it home; it overrides the venue’s rule.',
    example: '650',
    fills: ['transport'],
  },
  {
    id: 'proxy',
    label: 'Proxy',
    words: 'proxy bid; my proxy; proxy placed; placed proxy; proxy amount',
    how: 'The proxy bid that was placed at the sale.',
    example: '11,250',
    fills: ['proxy'],
  },
  {
    id: 'funding',
    label: 'Paid from',
    words: 'funding; paid by; pay with; floor or cash; financed',
    how: '"Floor" or "cash".',
    example: 'floor',
    fills: ['funding'],
  },
  {
    id: 'pageUrl',
    label: 'Page',
    words: 'link; url; web page; web address; page link; listing link; listing url; lot link; lot url',
    how: 'A web address beginning with http.',
    example: 'https://saguaro-flats.example/lot/214',
    fills: ['pageUrl'],
  },
  {
    id: 'notes',
    label: 'Notes',
    words: 'note; comment; comments; remark; remarks; announcement; announcements; disclosures; condition; details',
    how: 'Kept as written; several such columns are kept one under the other.',
    example: 'Ladder rack, one key',
    fills: ['notes'],
    many: true,
  },
  {
    id: 'more',
    label: 'More (written by Headroom)',
    words: '',
    how: 'What the other columns have no room for; only in files that this tool wrote.',
    example: '{}',
    fills: [],
  },
] as const satisfies readonly ColumnField[];

export type ColumnFieldId = (typeof COLUMN_FIELDS)[number]['id'];
const byId = new Map<ColumnFieldId, ColumnField>(COLUMN_FIELDS.map((field) => [field.id, field]));

export function columnField(id: ColumnFieldId): ColumnField {
  const field = byId.get(id);
  if (field === undefined) throw new Error(`not a column field: ${id}`);
  return field;
}
