type Fuzz = typeof import('../../tests/fuzz/say.ts');

/** `npm run fuzz -- [READER …] --count N --seed S`: altered texts for every reader of what comes from outside. */
export async function run(flags: readonly string[], load: (file: string) => Promise<unknown>): Promise<number> {
  const { sayFuzz } = (await load('tests/fuzz/say.ts')) as Fuzz;
  return sayFuzz(flags);
}
