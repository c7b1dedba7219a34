import type { LotId } from '../../domain/lot/lot.ts';
import type { Happening } from '../../journal/happening.ts';

/**
 * What an entry of the books says of one lot: of a bill or an invoice for several cars only its own lines. Null when it says
 * nothing of it; so is the close of a month, which books nothing.
 */
export function bookedForLot(happening: Happening, id: LotId): Happening | null {
  const own = <One extends { readonly lot: LotId }>(lines: readonly One[]) => lines.filter(({ lot }) => lot === id);
  switch (happening.kind) {
    case 'costs-booked':
    case 'payment-booked': {
      const lines = own<(typeof happening.lines)[number]>(happening.lines);
      return lines.length === 0 ? null : ({ ...happening, lines } as Happening);
    }
    case 'invoice-confirmed': {
      const [costs, payments] = [own(happening.costs), own(happening.payments)];
      return costs.length + payments.length === 0 ? null : { ...happening, costs, payments };
    }
    case 'settlement-booked':
    case 'floor-booked':
    case 'outcome-booked':
    case 'paper-noted':
      return happening.lot === id ? happening : null;
    default:
      return null;
  }
}
