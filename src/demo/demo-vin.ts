import { expectedCheckDigit } from '../domain/vin/check-digit.ts';
import { type Vin, vinSchema } from '../domain/vin/vin.ts';

const YEAR_CODES = 'ABCDEFGHJKLMNPRSTVWXY123456789';

/**
 * A VIN for an invented vehicle: a maker code that nobody was given, the model year in position 10 with a letter in
 * position 7 for years from 2010, and a right check digit unless `slip` asks for a wrong one.
 */
export function demoVin(maker: string, year: number, serial: number, slip = false): Vin {
  const code = YEAR_CODES.charAt((year - 1980) % 30);
  const open = `${maker}4D7C50${code}0${String(100_000 + serial).slice(-6)}`;
  const vin = vinSchema.parse(open);
  const right = expectedCheckDigit(vin);
  const digit = slip ? (right === '4' ? '5' : '4') : right;
  return vinSchema.parse(vin.slice(0, 8) + digit + vin.slice(9));
}
