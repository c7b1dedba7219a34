import { type Outcome, ok } from '../outcome.ts';
import { type Vin, vinSchema } from './vin.ts';
import { type VinRepair, vinLetterRepairs } from './vin-repairs.ts';

export interface VinRefusal {
  readonly reason: 'empty' | 'length' | 'characters';
  readonly message: string;
  /** What it may have been meant to be; to be offered, never applied. */
  readonly repairs: readonly VinRepair[];
}

/**
 * Reads a VIN as people type and paste it: blanks, dashes and dots between the characters and lower case do not matter.
 * A wrong check digit does not refuse it (cars made for other markets have none); see `examineVin`.
 */
export function readVin(text: string): Outcome<Vin, VinRefusal> {
  const tidy = tidyVin(text);
  const vin = vinSchema.safeParse(tidy);
  if (vin.success) return ok(vin.data);
  const failure = (reason: VinRefusal['reason'], message: string, repairs: readonly VinRepair[] = []) =>
    ({ ok: false, reason, message, repairs }) as const;
  if (tidy === '') return failure('empty', 'Type the 17 characters of the VIN, or leave it out for now.');
  if (tidy.length !== 17) return failure('length', lengthMessage(tidy.length));
  return failure('characters', charactersMessage(tidy), vinLetterRepairs(tidy));
}

/** Upper case, without the blanks and dashes that print and copy put in. */
export const tidyVin = (text: string): string => text.replace(/[\s\u00a0\u200b\ufeff\-‐-―−.·_*]/g, '').toUpperCase();

function lengthMessage(length: number): string {
  const difference = Math.abs(length - 17);
  const howMany = `${difference} ${difference === 1 ? 'character' : 'characters'}`;
  return length < 17
    ? `A VIN has 17 characters; this has ${length}. ${howMany} missing (before 1981 VINs could be shorter).`
    : `A VIN has 17 characters; this has ${length}. ${howMany} too many.`;
}

function charactersMessage(tidy: string): string {
  const wrong = [...tidy].flatMap((character, i) =>
    vinSchema.safeParse(`${character}1111111111111111`).success ? [] : [{ character, position: i + 1 }],
  );
  const first = wrong[0];
  const where = wrong.map(({ character, position }) => `position ${position} is ${character}`).join(', ');
  const why =
    first && 'IOQ'.includes(first.character) ? 'the letters I, O and Q are never used' : 'only letters and digits';
  return `A VIN can't hold this: ${where} (${why}).`;
}
