import { groupBy } from '../../group-by.ts';
import { sumCents } from '../../money/cents.ts';
import { tidyNumber } from './line-words.ts';
import type { NamedMove, ReadLine } from './name-payees.ts';
import { isNear } from './near.ts';
import { type Open, type Taken, take } from './open.ts';

/**
 * Lines and moves of one number: one check that was recorded in parts, one payment that the bank made in parts, or one of
 * each whose amounts differ, which is offered.
 */
export function numbered(open: Open): Taken[] {
  const byNumber = groupBy(
    [...open.lines.values()].flatMap((line) => [...line.words.numbers].map((number) => ({ line, number }))),
    ({ number }) => number,
  );
  const moves = groupBy(
    [...open.moves.values()].filter(({ number }) => number !== undefined),
    ({ number = '' }) => tidyNumber(number),
  );
  return [...moves].flatMap(([number, own]) => {
    const lines = (byNumber.get(number) ?? []).map(({ line }) => line).filter(({ key }) => open.lines.has(key));
    return lines.length === 0 ? [] : (ofNumber(open, lines, own) ?? []);
  });
}

function ofNumber(open: Open, lines: readonly ReadLine[], moves: readonly NamedMove[]): Taken | null {
  const named = (line: ReadLine, move: NamedMove) => {
    const found = open.fitOf(line, move);
    return found?.evidence === 'number' ? found : null;
  };
  const made = (own: readonly ReadLine[], recorded: readonly NamedMove[], sure: boolean) =>
    take(open, { lines: own, moves: recorded, evidence: 'number', sure });
  const clear = (own: readonly ReadLine[], recorded: readonly NamedMove[]) =>
    own.every((line) => recorded.every((move) => named(line, move)?.clear === true));
  const fits = lines.filter((line) => moves.every((move) => named(line, move) !== null));
  const whole = fits.filter((line) => line.cents === total(moves));
  const [line] = whole;
  if (line !== undefined && whole.length === 1) return made([line], moves, clear([line], moves));
  const [move] = moves;
  if (move === undefined || moves.length > 1) return null;
  if (fits.length > 1 && total(fits) === move.cents) return made(fits, [move], clear(fits, [move]));
  // A bank's fee for a check names the check too, so the amounts must be alike.
  const like = fits.filter((one) => isNear(one.cents, move.cents));
  return like.length === 1 && like[0] !== undefined ? made(like, [move], false) : null;
}

const total = (some: readonly { readonly cents: ReadLine['cents'] }[]): number =>
  sumCents(some.map((one) => one.cents));
