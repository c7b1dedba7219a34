import { expect, test } from 'vitest';
import { foldBooks } from '../../src/folds/fold-books.ts';
import { foldLots } from '../../src/folds/fold-lots.ts';
import { foldSetup } from '../../src/folds/fold-setup.ts';
import { sectionsOf } from '../../src/journal/states/setup-state.ts';
import { verifyChain } from '../../src/journal/verify-chain.ts';
import { at } from '../folds/journal-arbitrary.ts';
import { dump, journalOf, storedEntries } from '../store/raw-database.ts';
import { campaign, NAMES } from './campaign.ts';

/** `npm run team-campaign -- --acts N --seed S` plays it long. */
const ACTS = Number(process.env.TEAM_ACTS ?? 12);
const SEED = Number(process.env.TEAM_SEED ?? 7);

test(
  `three computers, ${ACTS} acts, absences, cuts, a server that is killed, put back and full: one state`,
  async () => {
    const { stores, tally, stop } = await campaign(ACTS, SEED);
    const journal = await journalOf(at(NAMES, 0));
    console.log(JSON.stringify({ seed: SEED, ...tally, entries: journal.length }));
    for (const [i, name] of NAMES.entries()) {
      expect(await storedEntries(name)).toEqual(await storedEntries(at(NAMES, 0)));
      const store = at(stores, i);
      expect(await store.allLots()).toEqual([...foldLots(journal).values()].sort((a, b) => (a.id < b.id ? -1 : 1)));
      expect(await store.setup()).toEqual(sectionsOf(foldSetup(journal)));
      expect(await store.books()).toEqual(foldBooks(journal));
      const before = await dump(name);
      await store.rebuildViews();
      expect(await dump(name)).toEqual(before);
    }
    expect(verifyChain(await storedEntries(at(NAMES, 0)))).toEqual([]);
    expect(tally.acts).toBe(ACTS);
    await stop();
  },
  ACTS > 100 ? 7_200_000 : 60_000,
);
