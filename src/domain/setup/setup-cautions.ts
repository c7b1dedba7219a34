import type { FeeEdition } from '../fees/fee-schedule.ts';
import type { Setup } from './setup.ts';
import { SECTION_WORDS } from './setup-words.ts';
import { valueInWords } from './value-words.ts';

/** Something that is allowed and probably not meant, as a sentence that says where and what to do. */
export interface SetupCaution {
  readonly section: keyof Setup;
  /** Position in the section's list. */
  readonly index: number;
  readonly place: string;
  readonly message: string;
}

/** What a setup lacks or contradicts without being wrong: a venue without fees, rates that overlap. */
export function setupCautions(setup: Setup): readonly SetupCaution[] {
  return [...venueCautions(setup), ...editionCautions(setup)];
}

function venueCautions(setup: Setup): readonly SetupCaution[] {
  const known = new Set(setup.feeSchedules.map((schedule) => schedule.id));
  return setup.venues.flatMap((venue, index) => {
    const at = (message: string): SetupCaution => ({
      section: 'venues',
      index,
      place: `${SECTION_WORDS.venues} › ${venue.name}`,
      message,
    });
    const missing = venue.feeScheduleIds.filter((id) => !known.has(id));
    return [
      ...missing.map((id) =>
        at(`Uses the fee schedule “${id}”, which is not in the setup. Remove it, or add the schedule.`),
      ),
      ...(venue.feeScheduleIds.length === 0
        ? [at('No fee schedule is checked, so a max bid here counts no buy fee.')]
        : []),
      ...(venue.transport.kind === 'flat' && venue.transport.cents === 0
        ? [at('Transport is $0, so delivery is counted as free.')]
        : []),
      ...(venue.transport.kind === 'per-mile' && (venue.transport.miles === 0 || venue.transport.centsPerMile === 0)
        ? [
            at(
              `Transport comes to ${valueInWords('cents', venue.transport.minimumCents)}, because the miles or the price a mile are 0.`,
            ),
          ]
        : []),
    ];
  });
}

function editionCautions(setup: Setup): readonly SetupCaution[] {
  return setup.feeSchedules.flatMap((schedule, index) => {
    const at = (message: string): SetupCaution => ({
      section: 'feeSchedules',
      index,
      place: `${SECTION_WORDS.feeSchedules} › ${schedule.name}`,
      message,
    });
    const overlap = firstOverlap(schedule.editions);
    const empty = schedule.editions.filter((e) => e.tables.length + e.charges.length === 0);
    return [
      ...(overlap === undefined
        ? []
        : [at(`Two sets of rates apply ${overlap}; the later one is used. End the older one the day before.`)]),
      ...empty.map((e) =>
        at(
          `The rates${e.validFrom === undefined ? '' : ` from ${e.validFrom}`} have no fee and no charge, so they come to $0.`,
        ),
      ),
    ];
  });
}

/** From when two sets of rates apply at once, in words; undefined if no two do. */
function firstOverlap(editions: readonly FeeEdition[]): string | undefined {
  const inOrder = editions.toSorted((a, b) => ((a.validFrom ?? '') < (b.validFrom ?? '') ? -1 : 1));
  let latestEnd: string | undefined;
  for (const { validFrom, validTo = '9999-12-31' } of inOrder) {
    if (latestEnd !== undefined && (validFrom ?? '') <= latestEnd) {
      return validFrom === undefined ? 'on the same days' : `on ${validFrom}`;
    }
    // Without an overlap so far, each list ends later than all before it.
    latestEnd = validTo;
  }
  return undefined;
}
