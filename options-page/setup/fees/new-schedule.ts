import type { FeeSchedule, FeeTable } from '../../../src/domain/fees/fee-schedule.ts';
import { ZERO } from '../../../src/domain/money/cents.ts';
import { ppm } from '../../../src/domain/money/rate.ts';
import { freshId } from '../../../src/ui/fresh-id.ts';

/** A fee table to be filled in: one band from $0 that costs nothing yet. */
export const newTable = (label: string): FeeTable => ({
  label,
  rounding: 'half-up',
  bands: [{ fromCents: ZERO, flatCents: ZERO, ratePpm: ppm(0) }],
});

/** A schedule to be filled in; it is kept once it has a name. */
export const newSchedule = (): FeeSchedule => ({
  id: freshId('fees'),
  name: '',
  editions: [{ tables: [newTable('Buy fee')], charges: [] }],
});
