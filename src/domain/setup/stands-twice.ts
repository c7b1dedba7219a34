import { plainWords } from '../text/plain-words.ts';
import type { Setup } from './setup.ts';
import type { SetupFault } from './setup-faults.ts';
import { placeInWords } from './setup-words.ts';

/**
 * What stands twice in a setup and must not: two venues, titles or recon templates of one name, of which nobody could tell which
 * is meant; a fee schedule that a venue lists twice, so that its fees would be charged twice. No rule of the schema, because
 * what was saved before must still open.
 * @param setup the sections that are checked; names are compared without case, blanks and punctuation
 */
export function standsTwice(setup: Partial<Setup>): readonly SetupFault[] {
  const faultAt = (path: readonly PropertyKey[], message: string): SetupFault => ({
    path,
    place: placeInWords(path, setup),
    message,
  });
  return [
    ...nameTwice(setup.venues ?? []).map((i) =>
      faultAt(['venues', i, 'name'], 'Another venue has this name too. Give one of them another name.'),
    ),
    ...(setup.venues ?? []).flatMap(({ feeScheduleIds }, i) =>
      repeats(feeScheduleIds).map((k) =>
        faultAt(
          ['venues', i, 'feeScheduleIds', k],
          'This fee schedule is listed twice, so its fees would be charged twice. Remove one.',
        ),
      ),
    ),
    ...nameTwice(setup.titles ?? []).map((i) =>
      faultAt(['titles', i, 'name'], 'Another title has this name too. Give one of them another name.'),
    ),
    ...nameTwice(setup.reconTemplates ?? []).map((i) =>
      faultAt(['reconTemplates', i, 'name'], 'Another template has this name too. Give one of them another name.'),
    ),
  ];
}

/** Positions of entries whose name stands before. An empty name is a fault of its own. */
const nameTwice = (list: readonly { readonly name: string }[]): readonly number[] =>
  repeats(list.map(({ name }) => plainWords(name) || name.trim())).filter((i) => list[i]?.name.trim() !== '');

const repeats = (list: readonly string[]): readonly number[] =>
  list.flatMap((one, i) => (list.indexOf(one) < i ? [i] : []));
