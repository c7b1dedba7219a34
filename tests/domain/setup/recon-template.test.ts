import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { cents } from '../../../src/domain/money/cents.ts';
import type { ReconLine } from '../../../src/domain/money/estimate.ts';
import { PPM, ppm } from '../../../src/domain/money/rate.ts';
import { fitsCar, type ReconTemplate, templatesFor, withTemplate } from '../../../src/domain/setup/recon-template.ts';
import { setupChanges } from '../../../src/domain/setup/setup-changes.ts';
import { readSetupFile, writeSetupFile } from '../../../src/domain/setup/setup-file.ts';
import { standsTwice } from '../../../src/domain/setup/stands-twice.ts';
import { startingSetup } from '../../../src/domain/setup/starting-setup.ts';
import { zone } from '../../../src/domain/time/zone.ts';

const line = (label: string, likely: number, chance = PPM): ReconLine => ({
  label,
  amount: { likely: cents(likely) },
  chance: ppm(chance),
});
const vans: ReconTemplate = {
  id: 'vans',
  name: 'Cargo van, over 80,000 miles',
  carClass: 'Cargo van',
  models: ['Parcelman', 'Loadmate'],
  lines: [line('Tires', 62_000), line('Detail', 18_000), line('Front brakes', 34_000, 500_000)],
};
const trucks: ReconTemplate = { id: 'trucks', name: 'Pickup', carClass: 'Pickup', lines: [line('Bed liner', 30_000)] };
const setup = { ...startingSetup(zone('America/Boise')), reconTemplates: [vans, trucks] };

describe('a template on a lot', () => {
  test('adds what the lot lacks behind what it has, and leaves every figure that was entered', () => {
    const own = [line('tires', 40_000), line('Windshield', 25_000), line('Detail', 18_000)];
    const { lines, added, left } = withTemplate(own, vans);
    expect(lines).toEqual([...own, vans.lines[2]]);
    expect(added).toEqual(['Front brakes']);
    // Detail is the same in both, so there is nothing to tell of it.
    expect(left).toEqual(['tires']);
  });

  test('a second time it adds nothing, and own lines always stay where they are', () => {
    const lines = fc.array(
      fc.record({ label: fc.constantFrom('Tires', 'Detail', 'tires ', '—', 'Glass'), likely: fc.nat(90_000) }),
    );
    fc.assert(
      fc.property(lines, lines, (own, template) => {
        const [before, of] = [own, template].map((list) => list.map(({ label, likely }) => line(label, likely)));
        const once = withTemplate(before ?? [], { lines: of ?? [] });
        expect(once.lines.slice(0, own.length)).toEqual(before);
        expect(withTemplate(once.lines, { lines: of ?? [] }).added).toEqual([]);
      }),
    );
  });
});

describe('which templates are offered', () => {
  test('those for the car first, by a model in its name', () => {
    expect(fitsCar(vans, { make: 'Quillback', model: 'Loadmate', trim: 'Cargo' })).toBe(true);
    expect(fitsCar(vans, { model: 'Loadmaster' })).toBe(false);
    expect(fitsCar({ models: ['12'] }, { model: 'Boxline 12' })).toBe(true);
    expect(fitsCar(trucks, { model: 'Hauler 20' })).toBe(false);
    expect(fitsCar(vans, {})).toBe(false);
  });

  test('first for several cars only when it is for all of them; one without lines is not offered', () => {
    const [van, truck] = [{ model: 'Parcelman' }, { model: 'Hauler 20' }];
    const offered = (cars: Parameters<typeof templatesFor>[1]) =>
      templatesFor([trucks, vans, { ...trucks, id: 'empty', lines: [] }], cars).map(
        ({ template, fits }) => `${template.id} ${fits}`,
      );
    expect(offered([van])).toEqual(['vans true', 'trucks false']);
    expect(offered([van, truck])).toEqual(['trucks false', 'vans false']);
    expect(offered([])).toEqual(['trucks false', 'vans false']);
  });
});

describe('templates in the setup', () => {
  test('come back from a setup file, and a file without them still reads', () => {
    expect(readSetupFile(writeSetupFile(setup))).toEqual({ ok: true, value: setup });
    const { reconTemplates: _, ...without } = setup;
    expect(readSetupFile(writeSetupFile(without))).toEqual({ ok: true, value: without });
  });

  test('two of one name are a fault, and a change names the template and its line', () => {
    expect(standsTwice({ reconTemplates: [vans, { ...vans, id: 'other' }] })).toMatchObject([
      { place: 'Recon templates › Cargo van, over 80,000 miles › name' },
    ]);
    const dearer = { ...vans, lines: [line('Tires', 70_000), ...vans.lines.slice(1)] };
    expect(setupChanges(setup, { ...setup, reconTemplates: [dearer, trucks] })).toMatchObject([
      { place: 'Recon templates › Cargo van, over 80,000 miles › Tires › amount › likely', after: '$700' },
    ]);
  });

  test('a fault of a file says which line of which template', () => {
    const wrong = { ...vans, lines: [{ label: 'Tires', amount: { likely: 100, low: 200 } }] };
    const reading = readSetupFile(JSON.stringify({ ...JSON.parse(writeSetupFile(setup)), reconTemplates: [wrong] }));
    expect(reading).toMatchObject({
      ok: false,
      faults: [{ place: 'Recon templates › Cargo van, over 80,000 miles › Tires › amount' }],
    });
  });
});
