import { run as writeSetupSchema } from '../setup-schema.ts';
import { runNode } from '../step.ts';

/** `npm run fix`: mends what a machine can mend (format, lint) and makes anew what is made from the program. */
export async function run(): Promise<number> {
  await writeSetupSchema();
  const { status, output } = await runNode(['node_modules/@biomejs/biome/bin/biome', 'check', '--write']);
  console.log(output.trimEnd());
  return status;
}
