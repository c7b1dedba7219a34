import { afterAll, beforeAll, expect, test } from 'vitest';
import { DAY } from '../../src/domain/time/units.ts';
import { type Attack, type Checker, loadTable, type Result, type Tried } from './checker.ts';
import { program, script } from './checkers.ts';
import { honestSamples, type Samples } from './honest/samples.ts';
import { closeTimeOffice } from './honest/time-office.ts';
import { tableOf } from './table-of.ts';

/**
 * A row can have hundreds of variants, such as every leaf or every bit, and some files are tens of MB large: all of that is
 * tried with ATTACKS=all, and here a part that takes seconds. There also what is found alone is looked for once more with a noted
 * fingerprint, which can only find more. What both checkers look at, one of them looks at today and the other tomorrow.
 */
const ALL = process.env.ATTACKS === 'all';
const MOST = ALL ? Infinity : 2;
const TODAY = Math.floor(Date.now() / DAY);
/** Honest files are for both, every day. */
const isDue = ({ target, how }: Attack, at: number, checker: Checker): boolean =>
  ALL || target !== 'pack' || how === 'asItIs' || (at + TODAY) % 2 === (checker === script ? 0 : 1);
const LONG = 1_200_000;

afterAll(closeTimeOffice);

let samples: Samples;
beforeAll(async () => {
  samples = await honestSamples();
}, LONG);

test.each([program, script])(
  'of every alteration the $name finds what can be found, owns up to the rest, and claims no more',
  async (checker: Checker) => {
    const honest = new Map<string, Result>();
    const tried: Tried[] = [];
    const { TABLE, tryAttack } = await loadTable();
    const only = process.env.ATTACKS_ONLY?.split(',');
    for (const [at, attack] of TABLE.entries()) {
      if (!ALL && attack.seconds !== undefined) continue;
      if (only !== undefined && !only.some((begin) => attack.id.startsWith(begin))) continue;
      if (only === undefined && !isDue(attack, at, checker)) continue;
      const row = await tryAttack(attack, checker, { samples, honest, most: MOST, eachSide: ALL });
      if (row !== null) tried.push(row);
    }
    console.log(tableOf(checker.name, tried));
    const missed = tried.flatMap(({ id, what, skipped, sides }) => [
      ...(skipped === undefined ? [] : [`${id} does not apply: ${skipped}`]),
      ...sides
        .filter(({ verdict }) => verdict === 'MISSED')
        .map(
          (side) =>
            `${id} ${side.name} ${side.label}: ${what} Expected ${side.expectation}, got ${side.outcome}. ${side.words ?? ''}`,
        ),
    ]);
    expect(missed).toEqual([]);
  },
  LONG,
);
