/** The parts of the setup, in the order in which a new user needs them. */
export const PART_TITLES = [
  { part: 'store', label: 'Store' },
  { part: 'venues', label: 'Venues' },
  { part: 'fees', label: 'Buy fees' },
  { part: 'rules', label: 'Money rules' },
  { part: 'costs', label: 'Costs' },
  { part: 'recon', label: 'Recon templates' },
  { part: 'holding', label: 'Holding' },
  { part: 'titles', label: 'Titles' },
  { part: 'busy', label: 'Busy hours' },
  { part: 'alerts', label: 'Reminders' },
  { part: 'after', label: 'After the sale' },
  { part: 'estimating', label: 'Estimating' },
  { part: 'sites', label: 'Sites' },
  { part: 'certificates', label: 'Certificates' },
  { part: 'accounts', label: 'Accounts' },
  { part: 'file', label: 'Setup file' },
] as const;

export type PartId = (typeof PART_TITLES)[number]['part'];
