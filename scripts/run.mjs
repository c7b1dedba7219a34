/**
 * The entry of every npm script: `node scripts/run.mjs TASK [flags]`. Until the packages are installed only Node's own
 * modules may be used here, so that one command works on a fresh checkout; the tasks themselves are TypeScript and are
 * loaded afterwards.
 */
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { ensureDependencies } from './ensure-dependencies.mjs';
import { loadTypescript } from './load-typescript.mjs';

/** Each file exports `run(flags, load)`, which resolves to the exit code; `load` imports further TypeScript files. */
const TASKS = {
  demo: 'scripts/tasks/demo.ts',
  test: 'scripts/tasks/test.ts',
  check: 'scripts/tasks/check.ts',
  fix: 'scripts/tasks/fix.ts',
  build: 'scripts/tasks/build.ts',
  package: 'scripts/tasks/package.ts',
  bench: 'scripts/tasks/bench.ts',
  worksheet: 'scripts/worksheet.ts',
  plan: 'scripts/plan.ts',
  scores: 'scripts/tasks/scores.ts',
  fuzz: 'scripts/tasks/fuzz.ts',
  faults: 'scripts/tasks/faults.ts',
  mutants: 'scripts/tasks/mutants.ts',
  'team-campaign': 'scripts/tasks/team-campaign.ts',
  'team-server': 'scripts/tasks/team-server.ts',
};

const OLDEST_NODE = [20, 19];

const [task = '', ...flags] = process.argv.slice(2);
process.chdir(path.dirname(path.dirname(fileURLToPath(import.meta.url))));

const [major = 0, minor = 0] = process.versions.node.split('.').map(Number);
if (major < OLDEST_NODE[0] || (major === OLDEST_NODE[0] && minor < OLDEST_NODE[1])) {
  fail(`Node ${OLDEST_NODE.join('.')} or newer is needed, and this is ${process.versions.node}.`);
}
if (!Object.hasOwn(TASKS, task)) {
  fail(`There is no task "${task}". Known are: ${Object.keys(TASKS).join(', ')}.`);
}

ensureDependencies();
const { run } = await loadTypescript(TASKS[task]);
process.exit(await run(flags, loadTypescript).catch(asCode));

/** An error that we threw says in its message what to do; any other is a mistake of ours, and where it happened helps. */
function asCode(error) {
  console.error(error?.constructor === Error ? error.message : error);
  return 1;
}

function fail(sentence) {
  console.error(sentence);
  process.exit(1);
}
