import { expect, test } from 'vitest';
import { partOf, partState, SETUP_PARTS } from '../../../options-page/setup/setup-parts.ts';
import { setupSectionsSchema } from '../../../src/domain/setup/setup.ts';
import { startingSetup } from '../../../src/domain/setup/starting-setup.ts';
import { zone } from '../../../src/domain/time/zone.ts';

test('every section of the setup can be changed on a part of the screen, venues on two, but for what is switched under Learn and the terms under Payables', () => {
  const shown = SETUP_PARTS.flatMap((part) => part.sections).toSorted();
  expect(shown).toEqual(
    [...Object.keys(setupSectionsSchema.shape), 'venues']
      .filter((key) => key !== 'corrections' && key !== 'vendors')
      .toSorted(),
  );
});

test('the address without a part is the first part, and an unknown one is none', () => {
  expect(partOf('')?.id).toBe('store');
  expect(partOf('busy')?.title).toBe('Busy hours');
  expect(partOf('nonsense')).toBeUndefined();
});

test('the list of parts says what is still empty', () => {
  const setup = startingSetup(zone('America/Boise'));
  const states = SETUP_PARTS.map((part) => `${part.id}: ${partState(part, setup)}`);
  expect(states.slice(0, 4)).toEqual(['store: no name yet', 'venues: none yet', 'fees: none yet', 'rules: ']);
});
