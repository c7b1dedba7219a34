import type { FeeBand } from '../../domain/fees/fee-schedule.ts';
import type { LotFacts } from '../../domain/lot/lot.ts';
import { type Cents, ZERO } from '../../domain/money/cents.ts';
import { PPM, type Ppm, ppm } from '../../domain/money/rate.ts';
import { withTransport, withVenueFees } from '../../domain/setup/fill-hole.ts';
import type { Setup } from '../../domain/setup/setup.ts';
import type { Venue } from '../../domain/setup/venue.ts';
import type { Zone } from '../../domain/time/zone.ts';
import { pricingContext } from '../../domain/worksheet/pricing-context.ts';
import { worksheetOf } from '../../domain/worksheet/worksheet-of.ts';

/** What the first page asks. What has a right start has it; everything else is blank until somebody fills it in. */
export interface FirstDraft {
  readonly storeName?: string | undefined;
  readonly zone: Zone;
  readonly venueName?: string | undefined;
  readonly venueZone: Zone;
  readonly bands?: readonly FeeBand[] | undefined;
  readonly step: Cents;
  readonly transport?: Cents | undefined;
  readonly profit: Cents;
  readonly lossChance: Ppm;
  readonly car?: string | undefined;
  readonly titleId: string;
  readonly retail?: Cents | undefined;
  readonly recon?: Cents | undefined;
}

export interface FirstResult {
  /** The sections of the setup that the answers change; what was left blank stays blank there. */
  readonly setup: Partial<Setup>;
  /** The first lot; undefined while nothing was said about it. */
  readonly facts: LotFacts | undefined;
  /** What is still missing for its max bid, each as a few words; none of it is ever taken as $0. */
  readonly missing: readonly string[];
  /** The max bid in whole cents, null where no price is worth bidding; absent while anything is missing. */
  readonly maxBid?: Cents | null;
}

/**
 * What the answers of the first page come to.
 * @param setup as it stands before
 * @param ids for the venue and its fee schedule
 */
export function firstResult(
  draft: FirstDraft,
  setup: Setup,
  ids: { readonly venue: string; readonly fees: string },
): FirstResult {
  const set = firstSetup(draft, setup, ids);
  const facts = firstFacts(draft, ids.venue);
  const sheet = worksheetOf(facts ?? {}, pricingContext({ ...setup, ...set }));
  const blank = BLANKS.filter(([field]) => draft[field] === undefined).map(([, words]) => words);
  const other = sheet.ok ? [] : sheet.problems.filter(({ reason }) => reason === 'unconfirmed-title');
  const missing = [...blank, ...other.map(() => 'what a car with that title brings (asked on its worksheet)')];
  const usable = missing.length === 0 && sheet.ok;
  return { setup: set, facts, missing, ...(usable && { maxBid: sheet.value.result.maxBid }) };
}

/** What a first max bid can't do without, in the order of the page. */
const BLANKS = [
  ['venueName', 'the venue’s name'],
  ['bands', 'its buy fees'],
  ['transport', 'transport'],
  ['car', 'the car'],
  ['retail', 'its retail'],
  ['recon', 'its recon'],
] as const satisfies readonly (readonly [keyof FirstDraft, string])[];

function firstSetup(draft: FirstDraft, setup: Setup, ids: { venue: string; fees: string }): Partial<Setup> {
  const { storeName = '', zone, venueName, venueZone, bands, step, transport, profit, lossChance } = draft;
  const own = {
    store: { ...setup.store, name: storeName, zone },
    rules: { ...setup.rules, dollarsCents: profit, lossChancePpm: lossChance },
  };
  if (venueName === undefined) return own;
  const blank: Venue = {
    id: ids.venue,
    name: venueName,
    zone: venueZone,
    feeScheduleIds: [],
    increments: [{ fromCents: ZERO, stepCents: step }],
    transport: { kind: 'flat', cents: ZERO },
  };
  const venue = transport === undefined ? blank : withTransport(blank, transport);
  const { feeSchedules } = setup;
  const venues = [...setup.venues, venue];
  return bands === undefined
    ? { ...own, venues }
    : { ...own, ...withVenueFees({ venues, feeSchedules }, venue.id, bands, ids.fees) };
}

function firstFacts({ car, retail, recon, titleId, venueName }: FirstDraft, venueId: string): LotFacts | undefined {
  if (car === undefined && retail === undefined && recon === undefined) return undefined;
  return {
    ...(car !== undefined && { model: car }),
    ...(retail !== undefined && { retail: { likely: retail } }),
    ...(recon !== undefined && { recon: [{ label: 'Recon', amount: { likely: recon }, chance: ppm(PPM) }] }),
    ...(venueName !== undefined && { venueId, venueName }),
    titleId,
  };
}
