import { expect, test } from 'vitest';
import { unattendedVisits } from '../../scripts/reader/visits/unattended-visits.ts';

const VISITS = Number(process.env.VISITS ?? 80);

test('in eighty visits of pages that come late, in part, or change under the reader, nothing of another lot is written', async () => {
  const sums = await unattendedVisits(VISITS);
  expect(sums.wrong).toEqual([]);
  // A rule that never wrote anything would never be wrong.
  expect(sums.written).toBeGreaterThan(VISITS / 2);
}, 300_000);
