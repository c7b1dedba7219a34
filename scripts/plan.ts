import { planCommand } from './plan/plan-command.ts';
import { machine } from './worksheet/around.ts';

/** `npm run plan -- LOTS.csv --setup SETUP.json --purse PURSE.json [--json]`: which bids to place, without a browser. */
export function run(flags: readonly string[]): Promise<number> {
  return planCommand(flags, machine());
}
