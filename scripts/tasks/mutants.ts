import { existsSync, readdirSync } from 'node:fs';
import path from 'node:path';
import { listMutants } from '../mutants/list-mutants.ts';
import { pickPlaces, rangeOf } from '../mutants/pick-places.ts';
import { sayMutants, scoreOf } from '../mutants/say-mutants.ts';
import { testsFor } from '../mutants/tests-for.ts';
import { tryMutants } from '../mutants/try-mutants.ts';

const ROOMS = ['domain', 'journal'];

/**
 * `npm run mutants -- [--room domain|journal] [--file PATH …] [--count N] [--seed S] [--floor PERCENT]`: how many small changes
 * of the core some test fails on. The exit code is 1 when they could not be tried, or when fewer than the floor were noticed.
 */
export async function run(flags: readonly string[]): Promise<number> {
  const [count, seed, floor] = [figure(flags, '--count', 20), figure(flags, '--seed', 1), figure(flags, '--floor', 0)];
  const mutants = await listMutants(filesOf(flags));
  const places = pickPlaces(mutants, count, seed);
  const tests = testsFor([...new Set(places.map(({ file }) => file))]);
  console.log(
    `${mutants.length} mutants in all; drawn from seed ${seed}: ${places.length} places, ${tests.length} test files.`,
  );
  const tried = await tryMutants(places.map(rangeOf), tests);
  const score = scoreOf(tried);
  if (score === null) throw new Error('No mutant could be tried. Name another --file or --seed.');
  console.log(sayMutants(tried));
  if (score * 100 >= floor) return 0;
  console.error(`Fewer than ${floor}% were noticed.`);
  return 1;
}

function filesOf(flags: readonly string[]): readonly string[] {
  const named = flags.filter((_, at) => flags[at - 1] === '--file');
  const missing = named.find((file) => !existsSync(file) || !ROOMS.some((room) => file.startsWith(`src/${room}/`)));
  if (missing !== undefined)
    throw new Error(`${missing} is no file of src/domain or src/journal. Give its path from here.`);
  if (named.length > 0) return named;
  const room = flags[flags.indexOf('--room') + 1] ?? '';
  const rooms = flags.includes('--room') ? [room] : ROOMS;
  if (!rooms.every((one) => ROOMS.includes(one))) throw new Error(`--room is ${ROOMS.join(' or ')}.`);
  return rooms
    .flatMap((one) =>
      readdirSync(`src/${one}`, { recursive: true, encoding: 'utf8' }).map((file) => path.join('src', one, file)),
    )
    .filter((file) => file.endsWith('.ts'))
    .sort();
}

function figure(flags: readonly string[], flag: string, otherwise: number): number {
  const at = flags.indexOf(flag);
  const given = Number(at === -1 ? otherwise : flags[at + 1]);
  if (!Number.isSafeInteger(given) || given < 0) throw new Error(`${flag} needs a whole number, 0 or more.`);
  return given;
}
