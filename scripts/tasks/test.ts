import { ensureBrowser } from '../ensure-browser.ts';
import { ensureJournalTool } from '../ensure-journal-tool.ts';
import { ensureTeamServer } from '../ensure-team-server.ts';
import { runLanes } from '../step.ts';
import { BROWSER_STEP, BUILD_STEPS, STATIC_STEPS, UNIT_STEP, ZONE_STEP } from '../steps.ts';
import { sweepLeftovers } from '../temporary-folder.ts';
import { saySlowest } from '../vitest-step.ts';

/**
 * `npm test`: everything, on a fresh checkout too. The last line says `N passed, N failed`; the exit code is 1 when
 * anything failed or could not run.
 */
export async function run(): Promise<number> {
  sweepLeftovers();
  // Installed now rather than in the middle, while nothing is being measured. What is missing shows in the tests.
  for (const name of ['chromium', 'firefox'] as const) reportMissing(() => ensureBrowser(name));
  for (const name of ['ledger', 'hledger', 'bean-check'] as const) reportMissing(() => ensureJournalTool(name));
  reportMissing(ensureTeamServer);
  const { passed, failed, files } = await runLanes(
    [...STATIC_STEPS, UNIT_STEP, ZONE_STEP],
    [...BUILD_STEPS, BROWSER_STEP],
  );
  console.log(`The ten slowest test files:\n${saySlowest(files)}`);
  console.log(`${passed} passed, ${failed} failed`);
  return failed === 0 ? 0 : 1;
}

function reportMissing(look: () => void): void {
  try {
    look();
  } catch (error) {
    console.error(error instanceof Error ? error.message : error);
  }
}
