import { expect, test } from 'vitest';
import { startingSetup } from '../../../src/domain/setup/starting-setup.ts';
import { instant } from '../../../src/domain/time/instant.ts';
import { zone } from '../../../src/domain/time/zone.ts';
import { EMPTY_BOOKS } from '../../../src/folds/fold-books.ts';
import type { LotState } from '../../../src/folds/lot-state.ts';
import type { EntryId } from '../../../src/journal/ids.ts';
import { nextLotId } from '../../../src/journal/sortable-id.ts';
import type { DisputeState } from '../../../src/journal/states/after-sale-state.ts';
import { afterSaleDeadlines } from '../../../src/views/after-sale/after-sale-deadlines.ts';
import { dispute, FEES, phoenix, SALTGRASS, wonLot } from '../../domain/after-sale/sold-lot.ts';

const SETUP = { ...startingSetup(zone('America/Boise')), venues: [SALTGRASS], ...FEES };
const ENTRY = '01J00000000000000000000000' as EntryId;
const noted = { entry: ENTRY, notedAt: phoenix('2026-11-24T11:00'), author: 'buyer' };
const id = nextLotId(instant(0), null, new Uint8Array(8));

function lot(more: Parameters<typeof wonLot>[0] = {}): LotState {
  const { facts, ended, disputes } = wonLot(more);
  const noDetails = { evidence: {}, source: 'typed' as const, dropped: false, bornIn: ENTRY };
  const result = ended && { ...ended, ...noted };
  return {
    id,
    facts,
    ...noDetails,
    addedAt: noted.notedAt,
    changedAt: noted.notedAt,
    sale: { bids: [], ...(result && { result }) },
    after: {
      steps: {},
      disputes: disputes.map(({ outcome: _, ...each }): DisputeState => ({ ...each, ...noted, steps: [] })),
    },
  };
}

test('the deadlines of a win are called a day and three hours before, with what is owed and where to go', () => {
  const [pay, title] = afterSaleDeadlines([lot()], EMPTY_BOOKS, SETUP, phoenix('2026-11-24T12:00'));
  expect(pay).toEqual({
    key: `after-${id}-pay`,
    at: phoenix('2026-11-27T17:00'),
    leads: [1440, 180],
    title: 'Pay, Larkspur',
    body: 'Saltgrass, until Fri Nov 27, 5:00 PM. $12,824.',
    route: `#/won/${id}`,
  });
  expect(title).toMatchObject({ key: `after-${id}-title`, quiet: true });
});

test('the deadline of a dispute leads to its page and says what is missing', () => {
  const lots = [lot({ disputes: [dispute({ side: 'theirs' })] })];
  const found = afterSaleDeadlines(lots, EMPTY_BOOKS, SETUP, phoenix('2026-12-02T12:00')).find(({ key }) =>
    key.startsWith('dispute'),
  );
  expect(found).toMatchObject({
    key: `dispute-${ENTRY}-answer`,
    at: phoenix('2026-12-04T09:00'),
    body: 'Saltgrass, until Fri Dec 4, 9:00 AM. Still missing: Pictures of the defect, Bill of sale.',
    route: `#/dispute/${ENTRY}`,
  });
});

test('what has no date, is done, or is late by more than a week is not called', () => {
  expect(afterSaleDeadlines([lot()], EMPTY_BOOKS, SETUP, phoenix('2026-12-05T12:00')).map(({ key }) => key)).toEqual([
    `after-${id}-title`,
  ]);
  expect(afterSaleDeadlines([lot({ ended: undefined })], EMPTY_BOOKS, SETUP, phoenix('2026-11-24T12:00'))).toEqual([]);
});
