import type { Setup, SetupSection } from '../../src/domain/setup/setup.ts';
import { setupCautions } from '../../src/domain/setup/setup-cautions.ts';
import { rulesSet } from './after/rules-set.ts';

export const PART_IDS = [
  'store',
  'venues',
  'fees',
  'rules',
  'costs',
  'recon',
  'holding',
  'titles',
  'busy',
  'alerts',
  'after',
  'estimating',
  'sites',
  'accounts',
  'file',
] as const;
export type PartId = (typeof PART_IDS)[number];

export interface SetupPart {
  readonly id: PartId;
  readonly title: string;
  readonly sections: readonly SetupSection[];
}

/** The parts in the order in which a new user needs them. */
export const SETUP_PARTS: readonly SetupPart[] = [
  { id: 'store', title: 'Store', sections: ['store'] },
  { id: 'venues', title: 'Venues', sections: ['venues'] },
  { id: 'fees', title: 'Buy fees', sections: ['feeSchedules'] },
  { id: 'rules', title: 'Money rules', sections: ['rules'] },
  { id: 'costs', title: 'Costs', sections: ['costs', 'undone'] },
  { id: 'recon', title: 'Recon templates', sections: ['reconTemplates'] },
  { id: 'holding', title: 'Holding', sections: ['carrying', 'stock'] },
  { id: 'titles', title: 'Titles', sections: ['titles'] },
  { id: 'busy', title: 'Busy hours', sections: ['rush'] },
  { id: 'alerts', title: 'Reminders', sections: ['alerts'] },
  { id: 'after', title: 'After the sale', sections: ['venues'] },
  { id: 'estimating', title: 'Estimating', sections: ['estimation'] },
  { id: 'sites', title: 'Sites', sections: ['sites'] },
  { id: 'accounts', title: 'Accounts', sections: ['books'] },
  { id: 'file', title: 'Setup file', sections: [] },
];

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
