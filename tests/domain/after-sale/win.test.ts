import { describe, expect, test } from 'vitest';
import { winMoney } from '../../../src/domain/after-sale/win-money.ts';
import { winStanding } from '../../../src/domain/after-sale/win-standing.ts';
import { cents } from '../../../src/domain/money/cents.ts';
import { dispute, FEES, NO_RULES, PLACE, phoenix, wonLot } from './sold-lot.ts';

const money = (more: Parameters<typeof wonLot>[0]) => {
  const { toPay, toComeBack, paid } = winMoney(wonLot(more), FEES, PLACE) ?? {};
  return { toPay, toComeBack, paid };
};
const paid = (amount?: number) => ({
  at: phoenix('2026-11-25T09:00'),
  cents: amount === undefined ? amount : cents(amount),
});
const ended = (how: 'sale-undone' | 'sold-again' | 'price-adjusted' | 'dropped', toUs?: number) =>
  dispute({
    outcome: { ended: how, at: phoenix('2026-12-09T12:00'), ...(toUs !== undefined && { cents: cents(toUs) }) },
  });

describe('the money between us and the venue', () => {
  // $12,400 and fees of $250 + 1 % + $50: $12,824.
  test('is the hammer price and its fees until it is paid', () => {
    expect(winMoney(wonLot(), FEES, PLACE)).toMatchObject({ hammer: 1_240_000, fees: 42_400, toPay: 1_282_400 });
    expect(money({ steps: { pay: [paid(1_000_000)] } })).toEqual({ toPay: 282_400, toComeBack: 0, paid: 1_000_000 });
    expect(money({ steps: { pay: [paid(1_000_000), paid(282_400)] } })).toMatchObject({ toPay: 0, toComeBack: 0 });
  });

  test('is all paid by a payment without an amount, however often it is noted', () => {
    expect(money({ steps: { pay: [paid()] } })).toEqual({ toPay: 0, toComeBack: 0, paid: 1_282_400 });
    expect(money({ steps: { pay: [paid(1_000_000), paid()] } })).toEqual({ toPay: 0, toComeBack: 0, paid: 1_282_400 });
    expect(money({ steps: { pay: [paid(), paid()] } })).toEqual({ toPay: 0, toComeBack: 0, paid: 1_282_400 });
  });

  test('comes back when the price was adjusted after it was paid, and is owed less when before', () => {
    expect(money({ disputes: [ended('price-adjusted', 80_000)] })).toMatchObject({ toPay: 1_202_400 });
    expect(money({ steps: { pay: [paid()] }, disputes: [ended('price-adjusted', 80_000)] })).toMatchObject({
      toComeBack: 80_000,
    });
    expect(
      money({ steps: { pay: [paid()], refund: [paid(80_000)] }, disputes: [ended('price-adjusted', 80_000)] }),
    ).toEqual({ toPay: 0, toComeBack: 0, paid: 1_202_400 });
  });

  test('comes back whole when the sale is undone or the car sold again, less what that costs', () => {
    expect(money({ steps: { pay: [paid()] }, disputes: [ended('sale-undone')] })).toMatchObject({
      toComeBack: 1_282_400,
    });
    expect(money({ steps: { pay: [paid()] }, disputes: [ended('sold-again', -35_000)] })).toMatchObject({
      toComeBack: 1_247_400,
    });
    expect(money({ disputes: [ended('sold-again', -35_000)] })).toEqual({ toPay: 35_000, toComeBack: 0, paid: 0 });
  });

  test('is not made up where the venue’s fees are not known', () => {
    const unknown = winMoney(wonLot(), { feeSchedules: [] }, PLACE);
    expect(unknown).toMatchObject({ fees: undefined, toPay: 1_240_000 });
  });

  test('there is none for a lot that was lost', () => {
    expect(
      winMoney(wonLot({ ended: { result: { ended: 'lost' }, at: phoenix('2026-11-24T10:00') } }), FEES, PLACE),
    ).toBe(undefined);
  });
});

describe('a win', () => {
  const delivered = { deliver: [{ at: phoenix('2026-12-01T15:00') }] };
  const home = { ...delivered, title: [{ at: phoenix('2026-12-05T10:00') }] };
  const standing = (at: string, more: Parameters<typeof wonLot>[0], place = PLACE) =>
    winStanding(wonLot(more), place, phoenix(at));

  test('is final once its claim windows are over and its title is in, and not a minute before', () => {
    // Delivered on Dec 1, seven days: Dec 8, 5 PM.
    expect(standing('2026-12-08T17:00', { steps: home })).toEqual({
      as: 'open',
      because: [{ kind: 'window', until: phoenix('2026-12-08T17:00') }],
    });
    expect(standing('2026-12-08T17:01', { steps: home })).toEqual({ as: 'final', since: phoenix('2026-12-08T17:00') });
  });

  test('is not final without its title, and then stays open to a claim about it', () => {
    expect(standing('2026-12-20T12:00', { steps: delivered })).toEqual({
      as: 'open',
      because: [{ kind: 'no-title' }, { kind: 'window', until: phoenix('2027-01-08T17:00') }],
    });
  });

  test('is not final while a window has not even begun, while it is in dispute, or while no rules are known', () => {
    expect(standing('2027-06-01T12:00', { steps: { title: home.title } })).toEqual({
      as: 'open',
      because: [{ kind: 'window-waits', from: 'delivery' }],
    });
    expect(standing('2027-06-01T12:00', { steps: home, disputes: [dispute()] })).toEqual({
      as: 'open',
      because: [{ kind: 'dispute' }],
    });
    expect(standing('2027-06-01T12:00', { steps: home }, NO_RULES)).toEqual({
      as: 'open',
      because: [{ kind: 'no-rules' }],
    });
  });

  test('is final again after a dispute that left it standing, and gone after one that did not', () => {
    expect(standing('2027-06-01T12:00', { steps: home, disputes: [ended('price-adjusted', 80_000)] })).toEqual({
      as: 'final',
      since: phoenix('2026-12-09T12:00'),
    });
    expect(standing('2027-06-01T12:00', { steps: home, disputes: [ended('sale-undone')] })).toEqual({ as: 'undone' });
  });
});
