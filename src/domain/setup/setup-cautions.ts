import type { FeeEdition } from '../fees/fee-schedule.ts';
import { feeCautions } from './fee-cautions.ts';
import { figureCautions, titleCautions, venueFigureCautions } from './figure-cautions.ts';
import type { Setup } from './setup.ts';
import { SECTION_WORDS } from './setup-words.ts';
import { isTransportUnsaid } from './transport-cost.ts';
import type { Unlikely } from './unlikely.ts';
import { valueInWords } from './value-words.ts';

/** Something that is allowed and probably not meant, as a sentence that says where and what to do. */
export interface SetupCaution extends Unlikely {
  readonly section: keyof Setup;
  /** Position in the section's list; 0 in a section that is no list. */
  readonly index: number;
  readonly place: string;
}

/**
 * What a setup lacks or contradicts without being wrong, and figures that no dealer means: a venue without fees, rates
 * that overlap, a minimum profit of $15 because a file has dollars where cents belong.
 */
export function setupCautions(setup: Setup): readonly SetupCaution[] {
  return [
    ...setup.venues.flatMap((venue, index) => placed('venues', index, venue.name, venueCautions(venue, setup))),
    ...setup.feeSchedules.flatMap((schedule, index) =>
      placed('feeSchedules', index, schedule.name, [
        ...editionsCautions(schedule.editions),
        ...schedule.editions.flatMap(feeCautions),
      ]),
    ),
    ...SINGLE.flatMap((section) => placed(section, 0, '', figureCautions[section](setup))),
    ...setup.titles.flatMap((title, index) => placed('titles', index, title.name, titleCautions(title))),
  ];
}

/** With the place in front, and how a file writes such a figure behind: for somebody who wrote the file by hand. */
export const cautionInFile = ({ place, message, inFile }: SetupCaution): string =>
  [`${place}: ${message}`, ...(inFile === undefined ? [] : [inFile])].join(' ');

const SINGLE = ['rules', 'costs', 'undone', 'carrying', 'estimation'] as const;

function placed(
  section: keyof Setup,
  index: number,
  name: string,
  found: readonly Unlikely[],
): readonly SetupCaution[] {
  const place = [SECTION_WORDS[section], ...(name === '' ? [] : [name])].join(' › ');
  // Two sets of rates can have the same oddity; it is said once.
  return [...new Map(found.map((one) => [one.message, { ...one, section, index, place }])).values()];
}

function venueCautions(venue: Setup['venues'][number], { feeSchedules }: Setup): readonly Unlikely[] {
  const known = new Set(feeSchedules.map((schedule) => schedule.id));
  const { transport, feeScheduleIds } = venue;
  const at = (message: string): Unlikely => ({ message });
  return [
    ...feeScheduleIds
      .filter((id) => !known.has(id))
      .map((id) => at(`Uses the fee schedule “${id}”, which is not in the setup. Remove it, or add the schedule.`)),
    ...(feeScheduleIds.length === 0 && venue.noBuyFees !== true
      ? [at('No buy fees yet, so its lots get no max bid. Enter the fees, or say that it charges none.')]
      : []),
    ...(isTransportUnsaid(venue)
      ? [at('No transport yet, so its lots get no max bid. Enter the price, or 0 if delivery is free.')]
      : []),
    ...(!isTransportUnsaid(venue) &&
    venue.noTransport !== true &&
    transport.kind === 'per-mile' &&
    (transport.miles === 0 || transport.centsPerMile === 0)
      ? [
          at(
            `Transport comes to ${valueInWords('cents', transport.minimumCents)}, because the miles or the price a mile are 0.`,
          ),
        ]
      : []),
    ...venueFigureCautions(venue),
  ];
}

function editionsCautions(editions: readonly FeeEdition[]): readonly Unlikely[] {
  const overlap = firstOverlap(editions);
  const empty = editions.filter((e) => e.tables.length + e.charges.length === 0);
  return [
    ...(overlap === undefined
      ? []
      : [
          {
            message: `Two sets of rates overlap: both apply ${overlap}, and the later one is used. End the older one the day before.`,
          },
        ]),
    ...empty.map((e) => ({
      message: `The rates${e.validFrom === undefined ? '' : ` from ${e.validFrom}`} have no fee and no charge, so they come to $0.`,
    })),
  ];
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
