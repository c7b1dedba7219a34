import { campaign } from './campaign.ts';
import { READERS } from './readers.ts';

/** `npm run fuzz -- [READER …] --count N --seed S`: every reader, or those named, on N altered texts each. */
export async function sayFuzz(flags: readonly string[]): Promise<number> {
  const figure = (flag: string, otherwise: number) => {
    const at = flags.indexOf(flag);
    const given = Number(at === -1 ? otherwise : flags[at + 1]);
    if (!Number.isSafeInteger(given) || given < 0) throw new Error(`${flag} needs a whole number, 0 or more.`);
    return given;
  };
  const [count, seed] = [figure('--count', 1000), figure('--seed', 1)];
  const named = flags.filter((flag, i) => !flag.startsWith('--') && !flags[i - 1]?.startsWith('--'));
  const unknown = named.filter((name) => !READERS.some((reader) => reader.name === name));
  if (unknown.length > 0) {
    console.error(`There is no reader “${unknown[0]}”. There are: ${READERS.map(({ name }) => name).join(', ')}.`);
    return 1;
  }
  let failed = 0;
  for (const reader of READERS.filter(({ name }) => named.length === 0 || named.includes(name))) {
    const { inputs, slowest, failures } = await campaign(reader, seed, count);
    failed += failures.length;
    console.log(
      `${reader.name.padEnd(8)} ${inputs.toLocaleString('en-US').padStart(9)} inputs from seed ${seed}, slowest ${(slowest * 1000).toFixed(0).padStart(4)} ms, ${failures.length} failed`,
    );
    for (const { seed: own, message } of failures.slice(0, 5)) console.log(`  --seed ${own} --count 1: ${message}`);
  }
  return failed === 0 ? 0 : 1;
}
