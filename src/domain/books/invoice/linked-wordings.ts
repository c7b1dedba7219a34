import { plainWords } from '../../text/plain-words.ts';
import type { BookedCar } from './judge-line.ts';
import type { FolderCar } from './match-car.ts';

/** By the wording of a bill, in plain words: the name of the expected line that it stands for; '' for none. */
export type Links = ReadonlyMap<string, string>;

/**
 * How a venue words what was expected under another name, learned from what was recorded against it: a line linked once is
 * known from then on, and forgotten when its recording is undone. A wording that was recorded against two different lines is
 * not known.
 */
export function linkedWordings(folders: readonly (FolderCar & BookedCar)[], venueId: string): Links {
  const links = new Map<string, string>();
  const torn = new Set<string>();
  for (const { venueId: at, costs, expected } of folders) {
    if (at !== venueId) continue;
    for (const { label, against } of costs) {
      const line = against === undefined ? undefined : expected.find(({ key }) => key === against);
      if (line === undefined) continue;
      const [words, name] = [plainWords(label), plainWords(line.label)];
      if (words === name) continue;
      if ((links.get(words) ?? name) !== name) torn.add(words);
      links.set(words, name);
    }
  }
  return new Map([...links].filter(([words]) => !torn.has(words)));
}
