import type { LotId } from '../../lot/lot.ts';
import type { Cents } from '../../money/cents.ts';
import { daysBetween } from '../../time/calendar-day.ts';
import type { LocalDate } from '../../time/local-date.ts';
import { tidyVin } from '../../vin/read-vin.ts';
import type { InvoiceCar } from './invoice-line.ts';

/** What of a folder tells which car it is. */
export interface FolderCar {
  readonly lot: LotId;
  readonly vin?: string | undefined;
  readonly lotNumber?: string | undefined;
  readonly venueId?: string | undefined;
  readonly won?: LocalDate | undefined;
  readonly hammer?: Cents | undefined;
}

/** Which folder a row belongs to, how sure that is, and why. */
export interface CarMatch {
  readonly how: 'exact' | 'near' | 'none';
  readonly lot: LotId | null;
  readonly why: string;
}

/** An invoice comes on the day of the sale or within some weeks after it; a lot number comes again in another sale. */
const WEEKS_AFTER = 45;
const DAYS_BEFORE = 3;
const DAYS_FOR_AMOUNT = 14;

const nothing = (why: string): CarMatch => ({ how: 'none', lot: null, why });
const found = (how: 'exact' | 'near', { lot }: FolderCar, why: string): CarMatch => ({ how, lot, why });

/**
 * Finds the folder of a row by VIN, lot number, day and amount. Exact is only what nothing speaks against; where two
 * folders fit, or one thing fits and another does not, it is near, and somebody has to say.
 * @param hammer the hammer price in the same row, where there is one
 */
export function matchCar(
  car: InvoiceCar,
  folders: readonly FolderCar[],
  venueId: string,
  hammer: Cents | undefined,
): CarMatch {
  const vin = car.vin === undefined ? '' : tidyVin(car.vin);
  const lotNumber = tidyLot(car.lotNumber);
  if (vin === '' && lotNumber === '') return byAmount(car, folders, venueId, hammer);
  const byVin = vin === '' ? [] : folders.filter((folder) => folder.vin !== undefined && tidyVin(folder.vin) === vin);
  const [one] = nearestFirst(byVin, car.date);
  if (one !== undefined) return withThisVin(one, byVin.length, car, lotNumber);
  const numbered = lotNumber === '' ? [] : folders.filter((folder) => tidyLot(folder.lotNumber) === lotNumber);
  const here = numbered.filter((folder) => folder.venueId === venueId && inTime(car.date, folder.won));
  const [lot] = nearestFirst(here, car.date);
  if (vin === '' && lot !== undefined) return withThisNumber(lot, here.length, hammer);
  if (vin !== '') {
    const alike = folders.filter((folder) => folder.vin !== undefined && isAlike(vin, tidyVin(folder.vin)));
    const [close] = nearestFirst(alike, car.date);
    if (close !== undefined)
      return found(
        'near',
        close,
        `The VIN is close to the folder’s (${close.vin}). One of them has a typo, or the invoice prints only the end.`,
      );
    if (lot !== undefined) return found('near', lot, 'The lot number matches, but the VIN is another car’s.');
    return nothing('No car with this VIN was won.');
  }
  const [elsewhere] = nearestFirst(numbered, car.date);
  if (elsewhere !== undefined)
    return found('near', elsewhere, 'The lot number matches, but that lot was won at another venue or another time.');
  return nothing('No lot with this number was won here.');
}

function withThisVin(folder: FolderCar, count: number, car: InvoiceCar, lotNumber: string): CarMatch {
  if (count > 1) return found('near', folder, 'This VIN was won more than once; this is the nearest in time.');
  const theirs = tidyLot(folder.lotNumber);
  if (lotNumber !== '' && theirs !== '' && lotNumber !== theirs)
    return found(
      'near',
      folder,
      `The VIN matches, but the lot number is ${car.lotNumber} here and ${folder.lotNumber} in the folder.`,
    );
  return found('exact', folder, 'The VIN matches.');
}

function withThisNumber(folder: FolderCar, count: number, hammer: Cents | undefined): CarMatch {
  if (count > 1)
    return found('near', folder, 'More than one car was won under this lot number; this is the nearest in time.');
  if (hammer !== undefined && folder.hammer !== undefined && hammer !== folder.hammer)
    return found('near', folder, 'The lot number matches, but the hammer price differs.');
  return found('exact', folder, 'The lot number, venue and date match.');
}

function byAmount(
  car: InvoiceCar,
  folders: readonly FolderCar[],
  venueId: string,
  hammer: Cents | undefined,
): CarMatch {
  const none = nothing('There is no VIN and no lot number, so the car is not known.');
  if (hammer === undefined) return none;
  const same = folders.filter(
    (folder) =>
      folder.hammer === hammer &&
      folder.venueId === venueId &&
      (car.date === undefined ||
        folder.won === undefined ||
        Math.abs(daysBetween(folder.won, car.date)) <= DAYS_FOR_AMOUNT),
  );
  const [only] = same;
  return only !== undefined && same.length === 1 ? found('near', only, 'Only the amount and the date match.') : none;
}

const tidyLot = (text: string | undefined): string =>
  (text ?? '')
    .toUpperCase()
    .replace(/^(?:LOT|RUN|NO\.?|#)\s*/i, '')
    .replace(/[\s-]/g, '')
    .replace(/^0+(?=.)/, '');

const inTime = (date: LocalDate | undefined, won: LocalDate | undefined): boolean => {
  if (date === undefined || won === undefined) return true;
  const days = daysBetween(won, date);
  return days >= -DAYS_BEFORE && days <= WEEKS_AFTER;
};

const nearestFirst = (folders: readonly FolderCar[], date: LocalDate | undefined): readonly FolderCar[] => {
  const off = ({ won }: FolderCar) => (won === undefined || date === undefined ? 0 : Math.abs(daysBetween(won, date)));
  return [...folders].sort((a, b) => off(a) - off(b));
};

/** One character of seventeen differs, or only the end of the VIN is printed (six characters or more). */
function isAlike(written: string, vin: string): boolean {
  if (written.length >= 6 && written.length < vin.length) return vin.endsWith(written);
  if (written.length !== vin.length) return false;
  let differ = 0;
  for (let i = 0; i < vin.length; i++) if (written[i] !== vin[i]) differ++;
  return differ === 1;
}
