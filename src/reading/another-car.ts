import type { LotFacts } from '../domain/lot/lot.ts';
import { vinSchema } from '../domain/vin/vin.ts';
import { modelYearOf } from '../domain/vin/vin-year.ts';

/**
 * Whether the page names another car than the lot whose VIN it shows: another make or year than is saved, or a year that
 * the VIN's tenth place rules out. A page that fills in part by part may rest for seconds with one car's VIN under the
 * name of another.
 */
export function namesAnotherCar(known: LotFacts, said: LotFacts): boolean {
  return isOtherMake(known.make, said.make) || isOtherYear(known.year, said);
}

/** "Dunmore Motors" and "DUNMORE" are one make. */
function isOtherMake(known: string | undefined, said: string | undefined): boolean {
  const [ours, theirs] = [lettersOf(known), lettersOf(said)];
  return ours !== '' && theirs !== '' && !ours.includes(theirs) && !theirs.includes(ours);
}

const lettersOf = (text = ''): string =>
  text
    .normalize('NFKD')
    .replace(/[^\p{L}\p{N}]/gu, '')
    .toLowerCase();

function isOtherYear(known: number | undefined, { year, vin }: LotFacts): boolean {
  if (year === undefined) return false;
  if (known !== undefined) return known !== year;
  const read = vinSchema.safeParse(vin);
  if (!read.success) return false;
  const { candidates } = modelYearOf(read.data, 'unknown', year);
  return candidates.length > 0 && !candidates.includes(year);
}
