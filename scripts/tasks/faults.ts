import { vitestStep } from '../vitest-step.ts';

/** `npm run faults -- --count N --seed S`: faults in both real browsers while they write, and what became of the entries. */
export async function run(flags: readonly string[]): Promise<number> {
  for (const [flag, variable] of [
    ['--count', 'FAULTS_COUNT'],
    ['--seed', 'FAULTS_SEED'],
  ] as const) {
    const at = flags.indexOf(flag);
    if (at === -1) continue;
    if (!/^\d+$/.test(flags[at + 1] ?? '')) throw new Error(`${flag} needs a whole number, such as ${flag} 100.`);
    process.env[variable] = flags[at + 1];
  }
  const step = vitestStep('faults', 'tests/browser/vitest.config.ts', 'tests/browser/faults.test.ts');
  const { passed, failed, output = '' } = await step.run();
  console.log(output);
  return failed === 0 && passed > 0 ? 0 : 1;
}
