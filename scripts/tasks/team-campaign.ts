import { vitestStep } from '../vitest-step.ts';

/** `npm run team-campaign -- --acts N --seed S`: three computers and a real server that is killed, put back and full; one state in the end. */
export async function run(flags: readonly string[]): Promise<number> {
  // A vitest step has fifteen minutes.
  process.env.TEAM_ACTS = '200';
  for (const [flag, variable] of [
    ['--acts', 'TEAM_ACTS'],
    ['--seed', 'TEAM_SEED'],
  ] as const) {
    const at = flags.indexOf(flag);
    if (at === -1) continue;
    if (!/^\d+$/.test(flags[at + 1] ?? '')) throw new Error(`${flag} needs a whole number, such as ${flag} 100.`);
    process.env[variable] = flags[at + 1];
  }
  const step = vitestStep('team campaign', 'tests/vitest.config.ts', 'tests/team-server/campaign.test.ts');
  const { passed, failed, output = '' } = await step.run();
  console.log(output);
  return failed === 0 && passed > 0 ? 0 : 1;
}
