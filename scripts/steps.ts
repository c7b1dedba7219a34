import { commandStep, type Step } from './step.ts';
import { vitestStep } from './vitest-step.ts';

const TSC = 'node_modules/typescript/bin/tsc';

/** What can be said without running anything. */
export const STATIC_STEPS: readonly Step[] = [
  commandStep('types', TSC, '-p', '.'),
  commandStep('types of the core, without a browser', TSC, '-p', 'src/domain'),
  commandStep('lint and format', 'node_modules/@biomejs/biome/bin/biome', 'ci', '--error-on-warnings'),
  commandStep(
    'unused code',
    'node_modules/knip/bin/knip.js',
    '--no-progress',
    '--include=files,dependencies,unlisted,exports,types',
  ),
];

/** Unit, property, reference and house tests, in Node. */
export const UNIT_STEP: Step = vitestStep('tests in Node', 'tests/vitest.config.ts');

/** What deals with time, as computers in several zones would run it. */
export const ZONE_STEP: Step = vitestStep('tests in six time zones', 'tests/zones/vitest.config.ts');

export const BROWSER_STEP: Step = vitestStep('tests in Chromium and Firefox', 'tests/browser/vitest.config.ts');

export const BUILD_STEPS: readonly Step[] = [
  commandStep('build, within the size budget', 'scripts/run.mjs', 'build'),
  commandStep(
    'what the Firefox store would refuse',
    'node_modules/web-ext/bin/web-ext.js',
    'lint',
    '--source-dir=dist/firefox',
    '--warnings-as-errors',
    '--no-config-discovery',
  ),
];
