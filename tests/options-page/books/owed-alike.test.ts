import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { LotId } from '../../../src/domain/lot/lot.ts';
import { type Cents, cents } from '../../../src/domain/money/cents.ts';
import { instant } from '../../../src/domain/time/instant.ts';
import type { Happening } from '../../../src/journal/happening.ts';
import type { EntryId } from '../../../src/journal/ids.ts';
import { subjectOfLot } from '../../../src/journal/subject.ts';
import type { Store } from '../../../src/store/store.ts';
import { phoenix } from '../../domain/after-sale/sold-lot.ts';
import { at } from '../../folds/journal-arbitrary.ts';
import { freshBrowser, openTestStore, value } from '../../store/open-test-store.ts';
import { bothOf, DAY, paid, VENUE, wonLot } from './both-places.ts';

test('whatever is tapped, booked, settled and undone, To do and the books say the same is owed', async () => {
  const amount = fc.integer({ min: 1, max: 900_000 }).map(cents);
  const act = fc.oneof(
    fc.record({ do: fc.constantFrom('paid' as const, 'back' as const), amount: fc.option(amount, { nil: undefined }) }),
    fc.record({
      do: fc.constantFrom(
        'fee' as const,
        'hammer' as const,
        'haul' as const,
        'payment' as const,
        'carrier' as const,
        'draw' as const,
        'end' as const,
        'settle' as const,
      ),
      amount,
    }),
    fc.record({ do: fc.constant('undo' as const), amount: fc.nat() }),
  );
  await fc.assert(
    fc.asyncProperty(fc.array(act, { minLength: 1, maxLength: 12 }), async (acts) => {
      freshBrowser();
      const store = await openTestStore({ channel: false });
      const lot = await wonLot(store);
      const subject = subjectOfLot(lot);
      const opened = { side: 'ours' as const, reason: 'other' as const, words: 'No.', at: instant(1), needs: [] };
      const [first] = value(await store.append([{ subject, happening: { kind: 'dispute-opened', opened } }]));
      const dispute = first?.id as EntryId;
      const done: EntryId[] = [];
      for (const each of acts) {
        const sum = each.amount === undefined ? undefined : cents(each.amount);
        if (each.do === 'undo') {
          const target = done[each.amount % Math.max(1, done.length)];
          // What was undone already stays so.
          const undone = target === undefined ? null : await store.undo(target);
          if (undone?.ok) done.push(at(undone.value, 0).id);
          continue;
        }
        done.push(at(value(await doIt(store, lot, dispute, each.do, sum)), 0).id);
      }
      const { toDo, folder, balance } = await bothOf(store, lot);
      expect(folder.open).toBe(toDo);
      expect(0 - (balance.get('payable') ?? 0)).toBe(folder.owed);
      store.close();
    }),
    { numRuns: 60 },
  );
});

function doIt(store: Store, lot: LotId, dispute: EntryId, what: string, amount: Cents | undefined) {
  const subject = subjectOfLot(lot);
  const sum = amount ?? cents(1);
  const line = { lot, cents: sum };
  const cost = (kind: 'fee' | 'hammer' | 'transport', payee: string) =>
    store.book({
      kind: 'costs-booked',
      date: DAY,
      paid: 'owed',
      payee,
      lines: [{ ...line, cost: kind, label: kind }],
    });
  switch (what) {
    case 'paid':
      return store.append([{ subject, happening: paid(amount) }]);
    case 'back':
      return store.append([{ subject, happening: { ...paid(amount), step: 'refund' } as Happening }]);
    case 'fee':
    case 'hammer':
      return cost(what, VENUE);
    case 'haul':
      return cost('transport', 'A carrier');
    case 'payment':
      return store.book({ kind: 'payment-booked', date: DAY, payee: VENUE, lines: [line] });
    case 'carrier':
      return store.book({ kind: 'payment-booked', date: DAY, payee: 'A carrier', lines: [line] });
    case 'draw':
      return store.book({ kind: 'floor-booked', lot, move: 'draw', cents: sum, date: DAY });
    case 'end': {
      const ended = sum % 2 === 0 ? ('sale-undone' as const) : ('price-adjusted' as const);
      const outcome = { ended, at: phoenix('2026-12-09T12:00'), cents: sum };
      return store.append([{ subject, happening: { kind: 'dispute-closed', dispute, outcome } }]);
    }
    default: {
      const settlement = { dispute, lot, date: DAY, label: 'Settled', cents: sum };
      return store.book({ kind: 'settlement-booked', ...settlement });
    }
  }
}
