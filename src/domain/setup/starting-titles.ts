import { PPM, ppm } from '../money/rate.ts';
import type { TitleBrand } from './money-rules.ts';

/**
 * What a branded title leaves of clean retail until the dealer puts in his own figure. There is no source for it: it is
 * a round number to start from, and no max bid is worked out from it before he confirms it.
 */
const STARTING_KEEPS = ppm(800_000);

/** Brands count as not floorable until the lender says otherwise: planning cash that is not needed does less harm. */
function branded(id: string, name: string, paper: string, caution: string): TitleBrand {
  return { id, name, keepsPpm: STARTING_KEEPS, unconfirmed: true, floorable: false, paper, caution };
}

/**
 * Title states to start from, in plain words. States of the union define and name them differently and some do not have
 * them all: what the title itself says, and the law of the state, decide.
 */
export const STARTING_TITLES: readonly TitleBrand[] = [
  { id: 'clean', name: 'Clean', keepsPpm: ppm(PPM), floorable: true },
  branded(
    'rebuilt',
    'Rebuilt',
    'The rebuilt title, and the state’s inspection report.',
    'Tell the customer in writing; many lenders will not finance it.',
  ),
  branded(
    'reconstructed',
    'Reconstructed',
    'The reconstructed title, and the state’s inspection report.',
    'Tell the customer in writing; insurers may want to see it first.',
  ),
  branded(
    'salvage',
    'Salvage',
    'The salvage certificate. For the road it must pass the state’s inspection and get a new title.',
    'It can’t be sold for the road as it stands. Count the inspection and the wait into recon and days.',
  ),
  {
    id: 'junk',
    name: 'Junk, not repairable',
    keepsPpm: ppm(0),
    floorable: false,
    paper: 'The certificate that goes with it.',
    caution: 'In most states it can never be titled for the road again, so its retail is counted as $0.',
  },
  branded('flood', 'Flood', 'The branded title.', 'Faults in the wiring show up late; tell the customer in writing.'),
  branded('fire', 'Fire', 'The branded title.', 'Look at what was repaired, and by whom.'),
  branded('hail', 'Hail', 'The branded title.', 'Ask whether the brand stays once the dents are gone.'),
  branded(
    'buyback',
    'Manufacturer buyback',
    'The manufacturer’s disclosure notice, executed, to be handed on before the retail sale; some states want a decal on the car too.',
    'The duties differ by state: look them up before you bid.',
  ),
  branded(
    'not-actual',
    'Mileage not actual',
    'The odometer statement that says “not actual”, unless the car is exempt by age.',
    'The same statement must go to the next owner.',
  ),
  branded(
    'exceeds-limits',
    'Mileage exceeds mechanical limits',
    'The odometer statement that says so, unless the car is exempt by age.',
    'The same statement must go to the next owner.',
  ),
  branded('theft', 'Theft recovered', 'The branded title.', 'Check every VIN plate and the keys.'),
  branded(
    'fleet-service',
    'Taxi or police',
    'The branded title, where the state brands it.',
    'Idle hours do not show in miles.',
  ),
  branded(
    'kit',
    'Kit or assembled',
    'The title with the state’s VIN, and the bills for the parts.',
    'Model year and VIN may be the state’s, not a maker’s.',
  ),
  branded(
    'grey-market',
    'Made for another market',
    'Its import papers: entry, safety and emissions.',
    'Without them it may not be registered at all.',
  ),
  branded(
    'bonded',
    'Bonded',
    'The bonded title, and the bond.',
    'Another owner may still come forward while the bond runs.',
  ),
  branded(
    'reassigned-vin',
    'VIN assigned by the state',
    'The title with the assigned VIN, and the plate on the car.',
    'Venues may have to announce it; check whether this one did.',
  ),
];
