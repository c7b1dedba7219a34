import { readFileSync } from 'node:fs';
import path from 'node:path';
import { Stryker } from '@stryker-mutator/core';
import type { Tried } from './say-mutants.ts';

const LONGEST_SHOWN = 160;
const OUTCOMES: Readonly<Record<string, Tried['outcome']>> = {
  Killed: 'killed',
  Timeout: 'killed',
  Survived: 'survived',
  // No test runs the place, so that any change of it would go unseen.
  NoCoverage: 'survived',
};

/** Has these tests try the mutants of these ranges, in a copy of the project that is gone afterwards. */
export async function tryMutants(ranges: readonly string[], tests: readonly string[]): Promise<readonly Tried[]> {
  const stryker = new Stryker({
    mutate: [...ranges],
    testRunner: 'vitest',
    plugins: ['@stryker-mutator/vitest-runner'],
    testFiles: [...tests],
    vitest: { configFile: 'tests/mutants/vitest.config.ts', related: false },
    coverageAnalysis: 'perTest',
    concurrency: 1,
    // The copy needs what the tests read; the rest would only take time.
    ignorePatterns: ['dist', '.demo-profile', '.screenshots', '.git', 'coverage'],
    tempDirName: '.mutants',
    cleanTempDir: 'always',
    // There is none of this name: it would be rewritten for the copy by a part that knows no TypeScript 7.
    tsconfigFile: 'none.json',
    disableTypeChecks: false,
    reporters: [],
    allowConsoleColors: false,
    logLevel: 'error' as never,
    fileLogLevel: 'off' as never,
    timeoutMS: 20_000,
    dryRunTimeoutMinutes: 30,
  });
  const results = await stryker.runMutationTest();
  return results.map(({ fileName, location: { start, end }, replacement, status }) => {
    const file = path.relative('.', fileName);
    return {
      file,
      line: start.line,
      column: start.column,
      was: oneLine(textOf(file, start, end)),
      is: oneLine(replacement),
      outcome: OUTCOMES[status] ?? 'neither',
    };
  });
}

interface Position {
  readonly line: number;
  readonly column: number;
}

/** What stands between two places; lines and columns from 1. */
function textOf(file: string, start: Position, end: Position): string {
  const lines = readFileSync(file, 'utf8')
    .split('\n')
    .slice(start.line - 1, end.line);
  const cut = lines.map((line, i) => (i === lines.length - 1 ? line.slice(0, end.column - 1) : line));
  return [cut[0]?.slice(start.column - 1), ...cut.slice(1)].join('\n');
}

function oneLine(text: string): string {
  const line = text.replace(/\s+/g, ' ');
  return line.length > LONGEST_SHOWN ? `${line.slice(0, LONGEST_SHOWN)}…` : line;
}
