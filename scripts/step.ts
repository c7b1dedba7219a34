import { spawn } from 'node:child_process';

/** What a step of a test run found: how much of it passed and failed, and what it printed. */
export interface Finding {
  readonly passed: number;
  readonly failed: number;
  readonly output: string;
  /** Of test files: how long each took. */
  readonly files?: readonly TimedFile[];
}

/** A test file, and how many seconds its tests and hooks took, on a machine as busy as it was. */
export interface TimedFile {
  readonly file: string;
  readonly seconds: number;
}

export interface Step {
  readonly name: string;
  readonly run: () => Promise<Finding>;
}

export interface CommandResult {
  readonly status: number;
  readonly output: string;
}

/** No step of ours takes this long; one that does hangs, and has failed. */
const LIMIT_MS = 15 * 60_000;

/** Runs a program under this Node and gathers what it prints. */
export function runNode(
  args: readonly string[],
  environment: Readonly<Record<string, string>> = {},
): Promise<CommandResult> {
  return new Promise((resolve) => {
    const child = spawn(process.execPath, args, {
      stdio: ['ignore', 'pipe', 'pipe'],
      env: { ...process.env, NO_UPDATE_NOTIFIER: '1', ...environment },
    });
    let output = '';
    const take = (text: string) => {
      output += text;
    };
    child.stdout.setEncoding('utf8').on('data', take);
    child.stderr.setEncoding('utf8').on('data', take);
    const limit = setTimeout(() => {
      output += `\nEnded after ${LIMIT_MS / 60_000} minutes without a result.\n`;
      child.kill('SIGTERM');
      setTimeout(() => child.kill('SIGKILL'), 5_000).unref();
    }, LIMIT_MS);
    child.on('error', (error) => take(String(error)));
    child.on('close', (code) => {
      clearTimeout(limit);
      resolve({ status: code ?? 1, output });
    });
  });
}

/** A step that passes as a whole when the command succeeds. */
export function commandStep(name: string, ...args: readonly string[]): Step {
  return {
    name,
    async run() {
      const { status, output } = await runNode(args);
      return status === 0 ? { passed: 1, failed: 0, output } : { passed: 0, failed: 1, output };
    },
  };
}

/**
 * Runs the lanes beside one another, the steps of a lane one after the other, and prints a line a step; what a failed
 * step printed follows its line. Gives back the sums, and the test files.
 */
export async function runLanes(
  ...lanes: readonly (readonly Step[])[]
): Promise<{ passed: number; failed: number; files: readonly TimedFile[] }> {
  const sum = { passed: 0, failed: 0, files: [] as TimedFile[] };
  const runLane = async (lane: readonly Step[]) => {
    for (const step of lane) {
      const started = performance.now();
      const { passed, failed, output, files = [] } = await step.run().catch(asFailure);
      sum.passed += passed;
      sum.failed += failed;
      sum.files.push(...files);
      const seconds = ((performance.now() - started) / 1000).toFixed(1);
      const verdict = failed === 0 ? 'ok  ' : 'FAIL';
      console.log(`${verdict} ${step.name}: ${passed} passed, ${failed} failed (${seconds} s)`);
      if (failed > 0) console.log(output.trimEnd());
    }
  };
  await Promise.all(lanes.map(runLane));
  return sum;
}

function asFailure(error: unknown): Finding {
  return { passed: 0, failed: 1, output: error instanceof Error ? (error.stack ?? error.message) : String(error) };
}
