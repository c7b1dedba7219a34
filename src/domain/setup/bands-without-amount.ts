import type { SetupFault } from './setup-faults.ts';
import { placeInWords, valueAt } from './setup-words.ts';

/** What a band can charge. A maximum alone charges nothing. */
const AMOUNTS = ['flatCents', 'ratePpm', 'minimumCents'] as const;

/**
 * Fee bands of a setup file that say no amount. They would count as $0, which a band that means it can say.
 * @param file a setup file as it was written, before anything was filled in
 */
export function bandsWithoutAmount(file: unknown): readonly SetupFault[] {
  return each(file, ['feeSchedules'])
    .flatMap((schedule) => each(file, [...schedule, 'editions']))
    .flatMap((edition) => each(file, [...edition, 'tables']))
    .flatMap((table) => each(file, [...table, 'bands']))
    .filter((path) => AMOUNTS.every((key) => valueAt(path.reduce<unknown>(valueAt, file), key) === undefined))
    .map((path) => ({
      path,
      place: placeInWords(path, file),
      message: 'This band has no amount. Add its flat fee or its percentage; a flat fee of 0 says that it is free.',
    }));
}

/** The paths of the elements of a list. */
function each(file: unknown, path: readonly PropertyKey[]): readonly (readonly PropertyKey[])[] {
  const list = path.reduce<unknown>(valueAt, file);
  return Array.isArray(list) ? list.map((_, i) => [...path, i]) : [];
}
