import { mkdtemp, readFile, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { type Finding, runNode, type Step, type TimedFile } from './step.ts';

/** The part of vitest's JSON report (the format is jest's) that says how the tests went. */
export interface TestReport {
  readonly testResults: readonly {
    /** The file's path. */
    readonly name: string;
    readonly status: string;
    /** In milliseconds since 1970. */
    readonly startTime: number;
    readonly endTime: number;
    readonly assertionResults: readonly { readonly status: string }[];
  }[];
}

/** A step that runs the tests of one vitest configuration and counts each test. */
export function vitestStep(name: string, config: string, ...filters: readonly string[]): Step {
  return {
    name,
    async run(): Promise<Finding> {
      const folder = await mkdtemp(path.join(tmpdir(), 'headroom-report-'));
      try {
        const file = path.join(folder, 'report.json');
        const { status, output } = await runNode([
          'node_modules/vitest/vitest.mjs',
          'run',
          '--root=.',
          `--config=${config}`,
          '--reporter=default',
          '--reporter=json',
          `--outputFile.json=${file}`,
          ...filters,
        ]);
        const report = await readFile(file, 'utf8').then(
          (text): TestReport => JSON.parse(text),
          () => undefined,
        );
        return { ...countTests(report, status), output, files: timedFiles(report) };
      } finally {
        await rm(folder, { recursive: true, force: true });
      }
    },
  };
}

/**
 * How many tests passed and failed. A test that did not run has failed, for whatever reason: skipped, or its file could
 * not be loaded. So has a run without a report, without a single test, or with an error outside every test.
 * @param status the exit code of the run
 */
export function countTests(report: TestReport | undefined, status: number): { passed: number; failed: number } {
  const files = report?.testResults ?? [];
  let passed = 0;
  let failed = 0;
  for (const { status: fileStatus, assertionResults } of files) {
    const good = assertionResults.filter((one) => one.status === 'passed').length;
    passed += good;
    failed += assertionResults.length - good;
    if (fileStatus !== 'passed' && good === assertionResults.length) failed++;
  }
  const somethingElse = failed === 0 && (passed === 0 || status !== 0);
  return { passed, failed: somethingElse ? 1 : failed };
}

/** How long each file took; one that runs in several browsers or zones is counted together. */
export function timedFiles(report: Pick<TestReport, 'testResults'> | undefined): readonly TimedFile[] {
  const seconds = new Map<string, number>();
  for (const { name, startTime, endTime } of report?.testResults ?? []) {
    const file = path.relative('.', name);
    seconds.set(file, (seconds.get(file) ?? 0) + (endTime - startTime) / 1000);
  }
  return [...seconds].map(([file, took]) => ({ file, seconds: took }));
}

/** The files that took longest, a line each: what to look at when the run has grown. */
export function saySlowest(files: readonly TimedFile[], most = 10): string {
  const slowest = files.toSorted((a, b) => b.seconds - a.seconds).slice(0, most);
  return slowest.map(({ file, seconds }) => `${seconds.toFixed(1).padStart(7)} s  ${file}`).join('\n');
}
