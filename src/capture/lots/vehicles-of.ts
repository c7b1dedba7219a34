import { isWithin, type PageElement } from '../dom/page-tree.ts';
import type { Candidates } from '../draft/candidates.ts';
import type { Vehicle } from '../structured/vehicles.ts';
import type { Scope } from '../text/lines.ts';

/**
 * The marked-up vehicles that are this lot. In a card: those marked up within it or with its VIN. On a page: those with
 * a VIN that the page shows; if there is none, the only one that is neither related to another nor in a list.
 */
export function vehiclesOf(
  vehicles: readonly Vehicle[],
  scope: Scope,
  extent: 'page' | 'card',
  into: Candidates,
): readonly Vehicle[] {
  const shown = new Set(into.of('vin').flatMap((reading) => (reading.sure === 'doubtful' ? [] : [reading.value])));
  const hasVin = (vehicle: Vehicle) => vehicle.vin !== '' && shown.has(vehicle.vin);
  if (extent === 'card') {
    return vehicles.filter((vehicle) => hasVin(vehicle) || isIn(vehicle.element, scope.roots));
  }
  const here = vehicles.filter((vehicle) => vehicle.beside !== 'related' && !isIn(vehicle.element, scope.skip));
  const alone = here.filter((vehicle) => vehicle.beside === null);
  const candidates = alone.length > 0 ? alone : here;
  const matching = candidates.filter(hasVin);
  if (matching.length > 0) {
    const nameless = candidates.filter((vehicle) => vehicle.vin === '');
    return nameless.length === 1 ? [...matching, ...nameless] : matching;
  }
  // Markup with another VIN than the one to be seen is about another car, or was left over from one.
  if (shown.size > 0 && candidates.some((vehicle) => vehicle.vin !== '')) return [];
  const kinds = new Set(candidates.map((vehicle) => vehicle.vin || vehicle.name.toLowerCase()));
  return kinds.size === 1 ? candidates : [];
}

function isIn(element: PageElement | null, parts: Iterable<PageElement>): boolean {
  if (element === null) return false;
  for (const part of parts) if (isWithin(element, part)) return true;
  return false;
}
