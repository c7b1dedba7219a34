import type { Setup, SetupSection } from '../../src/domain/setup/setup.ts';
import { setupCautions } from '../../src/domain/setup/setup-cautions.ts';
import { rulesSet } from './after/rules-set.ts';
import { PART_TITLES, type PartId } from './part-titles.ts';

export interface SetupPart {
  readonly id: PartId;
  readonly title: string;
  readonly sections: readonly SetupSection[];
}

/** What of the setup each part shows. */
const SECTIONS: Readonly<Record<PartId, readonly SetupSection[]>> = {
  store: ['store'],
  venues: ['venues'],
  fees: ['feeSchedules'],
  rules: ['rules'],
  costs: ['costs', 'undone'],
  recon: ['reconTemplates'],
  holding: ['carrying', 'stock'],
  titles: ['titles'],
  busy: ['rush'],
  alerts: ['alerts'],
  after: ['venues'],
  estimating: ['estimation'],
  sites: ['sites'],
  certificates: ['certificates'],
  accounts: ['books'],
  file: [],
};

/** The parts in the order in which a new user needs them. */
export const SETUP_PARTS: readonly SetupPart[] = PART_TITLES.map(({ part, label }) => ({
  id: part,
  title: label,
  sections: SECTIONS[part],
}));

/** The part that an address asks for; the first one where it asks for none, undefined where there is no such part. */
export const partOf = (id: string): SetupPart | undefined =>
  SETUP_PARTS.find((part) => part.id === (id === '' ? 'store' : id));

/** What follows the title in the list of parts: how many entries there are, or that something needs checking. */
export function partState(part: SetupPart, setup: Setup): string {
  if (part.id === 'after') return afterState(setup);
  const cautions = setupCautions(setup).filter((caution) => part.sections.includes(caution.section)).length;
  if (cautions > 0) return `${cautions} to check`;
  switch (part.id) {
    case 'store':
      return setup.store.name === '' ? 'no name yet' : '';
    case 'venues':
      return setup.venues.length === 0 ? 'none yet' : String(setup.venues.length);
    case 'fees':
      return setup.feeSchedules.length === 0 ? 'none yet' : String(setup.feeSchedules.length);
    case 'recon':
      return setup.reconTemplates?.length ? String(setup.reconTemplates.length) : '';
    case 'certificates':
      return setup.certificates?.length ? String(setup.certificates.length) : '';
    case 'titles':
      return String(setup.titles.length);
    default:
      return '';
  }
}

function afterState({ venues }: Setup): string {
  const without = venues.filter(({ afterSale }) => afterSale === undefined || rulesSet(afterSale) === 0).length;
  return without === 0 ? '' : `${without} without`;
}
