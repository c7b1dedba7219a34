/** The parts of what is learned, in the order of their links. */
export const LEARN_PARTS = [
  { part: '', label: 'Forecasts' },
  { part: 'money', label: 'Where the money went' },
  { part: 'misses', label: 'Misses' },
  { part: 'groups', label: 'By venue, car and person' },
  { part: 'corrections', label: 'Corrections' },
] as const;
