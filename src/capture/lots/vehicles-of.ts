import { isWithin, type PageElement } from '../dom/page-tree.ts';
import type { Candidates } from '../draft/candidates.ts';
import type { Vehicle } from '../structured/vehicles.ts';
import type { Line } from '../text/lines.ts';
import type { LotPlan } from './plan-lots.ts';

/** Where on the page a lot is, and what stands there. */
export interface LotPlace {
  readonly roots: readonly PageElement[];
  readonly plan: LotPlan;
  readonly lines: readonly Line[];
  readonly extent: 'page' | 'card';
  readonly link: string | null;
}

/**
 * The marked-up vehicles that are this lot. In a card: those marked up within it or with its VIN. On a page: those with
 * a VIN that the page shows; if there is none, the only one that is neither related to another nor in a list.
 */
export function vehiclesOf(
  vehicles: readonly Vehicle[],
  { roots, plan, lines, extent, link }: LotPlace,
  into: Candidates,
): readonly Vehicle[] {
  const shown = new Set(into.of('vin').flatMap((reading) => (reading.score < 0.5 ? [] : [reading.value as string])));
  const hasVin = (vehicle: Vehicle) => vehicle.vin !== '' && shown.has(vehicle.vin);
  if (extent === 'card') {
    const within = vehicles.filter((vehicle) => hasVin(vehicle) || isIn(vehicle.element, roots));
    return within.length > 0 || shown.size > 0 ? within : listedAs(vehicles, lines, link);
  }
  const titles = lines.filter(({ heading }) => heading === 1).map(({ text }) => text.toLowerCase());
  const titled = vehicles.filter(
    ({ name, vin }) => titles.includes(name.toLowerCase()) && (shown.size === 0 || shown.has(vin)),
  );
  const [only] = titled;
  if (only !== undefined && titled.length === 1) return [only];
  const here = vehicles.filter((vehicle) => vehicle.beside !== 'related' && !isIn(vehicle.element, plan.skip));
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

/** The one vehicle of a list in markup that the card links to, or that is called what the card says. */
function listedAs(vehicles: readonly Vehicle[], lines: readonly Line[], link: string | null): readonly Vehicle[] {
  const linked = link === null ? [] : vehicles.filter(({ url }) => url !== '' && samePage(url, link));
  if (linked.length === 1) return linked;
  const named = vehicles.filter(
    ({ name }) => name !== '' && lines.some(({ text }) => text.toLowerCase().startsWith(name.toLowerCase())),
  );
  const [first] = named;
  return first !== undefined && named.length === 1 ? [first] : [];
}

const samePage = (url: string, link: string): boolean => URL.parse(url, link)?.href === link;

function isIn(element: PageElement | null, parts: Iterable<PageElement>): boolean {
  if (element === null) return false;
  for (const part of parts) if (isWithin(element, part)) return true;
  return false;
}
