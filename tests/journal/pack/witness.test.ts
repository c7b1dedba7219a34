import { beforeAll, expect, test } from 'vitest';
import { packPage } from '../../../src/journal/pack/pack-page.ts';
import { sayProved } from '../../../src/journal/pack/say-pack-check.ts';
import { verifyPack } from '../../../src/journal/pack/verify-pack.ts';
import type { Witness } from '../../../src/journal/witness.ts';
import { loadScript } from '../../attacks/checker.ts';
import { at } from '../../folds/journal-arbitrary.ts';
import { value } from '../../store/open-test-store.ts';
import { threeStores } from '../../store/store-acts.ts';
import { inventedServer } from '../../team/invented-server.ts';
import { inventedTeam } from '../../team/invented-team.ts';
import { linesIn, resealed } from './sample-pack.ts';

let pack = '';
let devices: readonly string[] = [];

/** The buyer's lot, of which the manager has written too, and each has seen what the other wrote. */
beforeAll(async () => {
  const names = ['buyer', 'manager'];
  const stores = await threeStores(names);
  const team = await inventedTeam(names);
  const [store, other] = [at(stores, 0), at(stores, 1)];
  const [buyer, manager] = [at(team, 0), at(team, 1)];
  // By its clock these are written before the stores' own clocks begin to count.
  const { wire } = inventedServer(Date.UTC(2026, 3, 10, 16));
  const lot = at(value(await store.addLots('typed', [{ facts: { make: 'Alder' } }])).lots, 0);
  const meet = async (one: typeof buyer) => {
    await one.fetch(wire);
    await one.send(wire);
  };
  await meet(buyer);
  await meet(manager);
  value(await other.changeLot(lot, { set: { miles: 40_000 } }));
  await meet(manager);
  await meet(buyer);
  value(await store.changeLot(lot, { set: { miles: 41_000 } }));
  await meet(buyer);
  await meet(manager);
  value(await other.changeLot(lot, { set: { notes: 'looked at' } }));
  await meet(manager);
  await meet(buyer);
  const evidence = await store.evidenceOf(lot, 'everything');
  if (evidence === null) throw new Error('no evidence');
  devices = team.map(({ device }) => device);
  const page = { title: 'Alder', madeBy: 'Made by the buyer', facts: [], moments: [], files: [], script: '' };
  pack = packPage({ ...page, ...evidence }).join('');
});

async function said(html: string): Promise<{ readonly program: string; readonly script: string }> {
  const checked = value(await verifyPack(html));
  const shown = checked.findings.length > 0 ? checked.findings : sayProved(checked);
  const { look } = await loadScript();
  const found = look(html, []);
  return {
    program: [...shown, ...checked.told].join('\n'),
    script: found.refused === undefined ? found.said.join('\n') : found.refused,
  };
}

const witness = (): Witness => {
  const [head] = linesIn(pack) as unknown as readonly { readonly witness?: Witness }[];
  if (head?.witness === undefined) throw new Error('no witness');
  return head.witness;
};
const withWitness = (changed: object): string =>
  resealed(
    pack,
    linesIn(pack).map((line, i) => (i === 0 ? { ...line, witness: { ...witness(), ...changed } } : line)),
  );

test('a pack of a team says when the server stored each entry, and who had signed that he had them', async () => {
  const [buyer, manager] = devices;
  const { stored, sightings } = witness();
  expect(stored.map(({ device, first, last, place }) => [device, first, last, place]).sort()).toEqual(
    [
      [buyer, 1, 1, 1],
      [buyer, 2, 2, 3],
      [manager, 1, 1, 2],
      [manager, 2, 2, 4],
    ].sort(),
  );
  expect(sightings.map(({ by }) => by)).toEqual([manager]);
  for (const words of Object.values(await said(pack))) {
    expect(words).toMatch(
      new RegExp(`of device ${buyer}, number 1 at 2026-04-10 16:00:00 UTC as message 1; number 2 at .* as message 3`),
    );
    expect(words).toMatch(/Nobody signed that/);
    expect(words).toMatch(
      new RegExp(`Device ${manager} signed that it had, .*number 1 to 2 of device ${buyer} as they`),
    );
  }
});

test('what was changed in it is found by the program and by the script, or said', async () => {
  const { stored, sightings } = witness();
  const [sighting, first] = [at(sightings, 0), at(stored, 0)];
  const cases: readonly [string, object, RegExp][] = [
    ['the time of a sighting', { sightings: [{ ...sighting, at: sighting.at - 1 }] }, /does not fit its signature/],
    ['who saw it', { sightings: [{ ...sighting, by: devices[0] }] }, /does not fit its signature/],
    [
      'what was seen',
      { sightings: [{ ...sighting, heads: [{ ...at(sighting.heads, 0), hash: 'a'.repeat(64) }] }] },
      /does not fit its signature/,
    ],
    ['numbers that are not there', { stored: [{ ...first, first: 70, last: 71 }] }, /is not in this file/],
    ['numbers that were stored twice', { stored: [first, { ...first, place: 9 }] }, /is not in this file/],
    [
      'a time before it was written',
      { stored: stored.map((row) => ({ ...row, at: row.at - 86_400_000 })) },
      /stored before its clock says/,
    ],
    [
      'the order',
      { stored: stored.map((row) => ({ ...row, place: 9 - row.place })) },
      /order of device .* is not that of its numbers/,
    ],
  ];
  for (const [what, changed, words] of cases) {
    const { program, script } = await said(withWitness(changed));
    expect(program, what).toMatch(words);
    expect(script.replaceAll("'", '’'), what).toMatch(words);
  }
});

test('a chain that was rewritten after another device had seen it is found by what that one signed', async () => {
  const { sightings } = witness();
  const [head, ...lines] = linesIn(pack);
  // Everything of the buyer's is another now, and fits together: only the manager's word speaks of how it was.
  const other = { ...at(sightings, 0) };
  const evidence = { ...head, witness: { stored: [], sightings: [other] } };
  const rewritten = JSON.parse(
    JSON.stringify([evidence, ...lines]).replaceAll(other.heads[0]?.hash ?? '', 'b'.repeat(64)),
  ) as { witness?: Witness }[];
  // The sighting itself can't be changed with it.
  const kept = rewritten.map((line, i) => (i === 0 ? { ...line, witness: { stored: [], sightings: [other] } } : line));
  for (const words of Object.values(await said(resealed(pack, kept)))) expect(words).toMatch(/the chain was rewritten/);
});
