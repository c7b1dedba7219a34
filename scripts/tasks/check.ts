import { runLanes } from '../step.ts';
import { STATIC_STEPS, UNIT_STEP } from '../steps.ts';

/** `npm run check`: the fast half of `npm test`, for before a commit. */
export async function run(): Promise<number> {
  const { passed, failed } = await runLanes([UNIT_STEP], STATIC_STEPS);
  console.log(`${passed} passed, ${failed} failed`);
  return failed === 0 ? 0 : 1;
}
