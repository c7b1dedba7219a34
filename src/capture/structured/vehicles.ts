import type { PageElement } from '../dom/page-tree.ts';
import { bareVins, labeledVin } from '../fields/find-vins.ts';
import { readVehicleName } from '../fields/vehicle-name.ts';
import { isThing, onlyText, type Thing, textsOf, thingsOf } from './thing.ts';

/** A vehicle in the page's structured data, with the offers for it and the sale it is in. */
export interface Vehicle {
  readonly thing: Thing;
  readonly vin: string;
  readonly name: string;
  readonly url: string;
  readonly offers: readonly Thing[];
  readonly events: readonly Thing[];
  /** Whoever makes the offer, where that is said from his side. */
  readonly sellers: readonly Thing[];
  /** Named as similar or related to another, or an element of a list. */
  readonly beside: 'related' | 'listed' | null;
  readonly element: PageElement | null;
}

const VEHICLES: ReadonlySet<string> = new Set(['Vehicle', 'Car', 'Motorcycle', 'MotorizedBicycle', 'BusOrCoach']);
const PRODUCTS: ReadonlySet<string> = new Set(['Product', 'IndividualProduct', 'ProductModel', 'SomeProducts']);
const VEHICLE_PROPERTIES = [
  'vehicleIdentificationNumber',
  'mileageFromOdometer',
  'vehicleModelDate',
  'vehicleTransmission',
  'driveWheelConfiguration',
  'vehicleEngine',
];

/** @param newest the latest model year that can be */
export function vehiclesIn(things: readonly Thing[], newest: number): readonly Vehicle[] {
  const offersFor = new Map<Thing, Thing[]>();
  const eventsFor = new Map<Thing, Thing[]>();
  const sellersFor = new Map<Thing, Thing[]>();
  const beside = new Map<Thing, 'related' | 'listed'>();
  for (const thing of things) {
    for (const item of thingsOf(thing, 'itemOffered')) push(offersFor, item, thing);
    for (const item of thingsOf(thing, 'offers')) if (isVehicle(item, newest)) push(eventsFor, item, thing);
    for (const offer of thingsOf(thing, 'makesOffer')) push(sellersFor, offer, thing);
    for (const item of thingsOf(thing, 'isRelatedTo', 'isSimilarTo', 'isConsumableFor')) beside.set(item, 'related');
    for (const item of thingsOf(thing, 'itemListElement')) {
      for (const listed of [item, ...thingsOf(item, 'item')]) beside.set(listed, 'listed');
    }
  }
  const events = things.filter(isSale);
  return things
    .filter((thing) => isVehicle(thing, newest))
    .map((thing): Vehicle => {
      const offers = [...new Set([...thingsOf(thing, 'offers'), ...(offersFor.get(thing) ?? [])])];
      const linked = events.filter((event) =>
        thingsOf(event, 'offers', 'about', 'subject', 'workFeatured').some((of) => of === thing || offers.includes(of)),
      );
      return {
        thing,
        vin: vinOf(thing),
        name: onlyText(thing, 'name'),
        url: onlyText(thing, 'url'),
        offers: offers.flatMap(singleOffers),
        events: [...linked, ...(eventsFor.get(thing) ?? []).filter(isSale)],
        sellers: offers.flatMap((offer) => sellersFor.get(offer) ?? []),
        beside: beside.get(thing) ?? null,
        element: thing.element,
      };
    });
}

function push(map: Map<Thing, Thing[]>, key: Thing, value: Thing): void {
  const list = map.get(key);
  if (list === undefined) map.set(key, [value]);
  else list.push(value);
}

export const isSale = (thing: Thing): boolean => thing.types.some((type) => /^(?:Sale|Business)?Event$/.test(type));

function isVehicle(thing: Thing, newest: number): boolean {
  if (thing.types.some((type) => VEHICLES.has(type))) return thing.properties.size > 0;
  if (!thing.types.some((type) => PRODUCTS.has(type))) return false;
  if (VEHICLE_PROPERTIES.some((property) => thing.properties.has(property))) return true;
  return vinOf(thing) !== '' || textsOf(thing, 'name').some((name) => readVehicleName(name, newest, []) !== null);
}

/** The VIN where it belongs, or a plausible one where sites without a vehicle type put it. */
function vinOf(thing: Thing): string {
  const stated = onlyText(thing, 'vehicleIdentificationNumber');
  if (stated !== '') return labeledVin(stated) ?? '';
  const other = textsOf(thing, 'serialNumber', 'sku', 'productID', 'mpn', 'identifier').flatMap((text) =>
    bareVins(text),
  );
  return new Set(other).size === 1 ? (other[0] ?? '') : '';
}

/** An aggregate stands for its offers only when there is exactly one: a range of prices is no price. */
function singleOffers(offer: Thing): readonly Thing[] {
  if (!offer.types.includes('AggregateOffer')) return [offer];
  const inner = [...(offer.properties.get('offers') ?? [])].filter(isThing);
  return inner.length === 1 ? inner : [];
}
