import { readFileSync } from 'node:fs';
import { type File, Instrumenter } from '@stryker-mutator/instrumenter';

/** One way in which a file of the program can be changed, at a place; lines from 0, columns from 0. */
export interface Mutant {
  readonly file: string;
  readonly start: Position;
  readonly end: Position;
}

export interface Position {
  readonly line: number;
  readonly column: number;
}

const NOBODY = () => undefined;
const SILENT = {
  isTraceEnabled: () => false,
  isDebugEnabled: () => false,
  isInfoEnabled: () => false,
  isWarnEnabled: () => false,
  isErrorEnabled: () => false,
  isFatalEnabled: () => false,
  trace: NOBODY,
  debug: NOBODY,
  info: NOBODY,
  warn: NOBODY,
  error: NOBODY,
  fatal: NOBODY,
};

/** Every mutant of the files, as StrykerJS makes them. */
export async function listMutants(files: readonly string[]): Promise<readonly Mutant[]> {
  const sources = files.map((name): File => ({ name, mutate: true, content: readFileSync(name, 'utf8') }));
  const { mutants } = await new Instrumenter(SILENT).instrument(sources, {
    plugins: null,
    excludedMutations: [],
    ignorers: [],
  });
  return mutants.map(({ fileName, location }) => ({ file: fileName, ...location }));
}
