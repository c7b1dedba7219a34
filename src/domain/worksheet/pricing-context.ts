import type { StockCar } from '../carrying/days-to-sell.ts';
import { type HoldFactors, holdFactors } from '../carrying/hold-factors.ts';
import { type HoldSpreads, holdSpreads } from '../carrying/hold-spreads.ts';
import { stockOf } from '../carrying/stock-record.ts';
import type { Funding } from '../deal/deal.ts';
import type { FeeSchedule } from '../fees/fee-schedule.ts';
import type { LotFacts } from '../lot/lot.ts';
import type { TitleBrand } from '../setup/money-rules.ts';
import type { Setup } from '../setup/setup.ts';
import type { Venue } from '../setup/venue.ts';
import { correctedSetup } from './corrected-setup.ts';

/** A setup made ready for pricing many lots: look-ups by id, and the holding cost worked out once. */
export interface PricingContext {
  /** With the corrections in it that stand for figures of the setup itself. */
  readonly setup: Setup;
  /** As it was given. */
  readonly given: Setup;
  /** The dealer's own cars, from which days to sell are learned. */
  readonly history: readonly StockCar[];
  readonly venueOf: (facts: LotFacts) => Venue | undefined;
  readonly scheduleById: ReadonlyMap<string, FeeSchedule>;
  readonly titleById: ReadonlyMap<string, TitleBrand>;
  readonly hold: (funding: Funding['kind']) => HoldFactors;
  /** The spread behind those factors, which the chance of a loss needs; worked out once for all lots. */
  readonly spreadOf: HoldSpreads;
}

export interface PricingOptions {
  /** The dealer's own cars, from which days to sell are learned; those of the setup when left out. */
  readonly history?: readonly StockCar[];
  /** Takes the place of the factors that the setup and the history give. */
  readonly hold?: (funding: Funding['kind']) => HoldFactors;
}

export function pricingContext(given: Setup, { history = stockOf(given), hold }: PricingOptions = {}): PricingContext {
  const setup = correctedSetup(given);
  const venueById = new Map(setup.venues.map((venue) => [venue.id, venue]));
  const venueByName = byName(setup.venues);
  return {
    setup,
    given,
    history,
    venueOf: ({ venueId, venueName }) =>
      venueId === undefined ? venueByName.get(venueName?.trim().toLowerCase() ?? '') : venueById.get(venueId),
    scheduleById: new Map(setup.feeSchedules.map((schedule) => [schedule.id, schedule])),
    titleById: new Map(setup.titles.map((title) => [title.id, title])),
    hold: hold ?? setupHold(setup, history),
    spreadOf: holdSpreads(setup.carrying, history),
  };
}

/** Of two venues of one name neither is the one that a lot means. */
function byName(venues: readonly Venue[]): ReadonlyMap<string, Venue> {
  const names = venues.map(({ name }) => name.trim().toLowerCase());
  return new Map(
    venues.flatMap((venue, i): [string, Venue][] => {
      const name = names[i] ?? '';
      return names.indexOf(name) === names.lastIndexOf(name) ? [[name, venue]] : [];
    }),
  );
}

function setupHold({ carrying }: Setup, history: readonly StockCar[]): PricingContext['hold'] {
  const factors = {
    floor: holdFactors(carrying, { history, funding: 'floor' }),
    cash: holdFactors(carrying, { history, funding: 'cash' }),
  };
  return (funding) => factors[funding];
}
