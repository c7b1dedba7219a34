import path from 'node:path';
import type { TestProject } from 'vitest/node';
import type { BrowserName } from '../../../manifest/manifest.ts';
import { type Bundle, bundleExtension, writePackage } from '../../../scripts/build-extension.ts';
import { removeFolder, sweepLeftovers, temporaryFolder } from '../../../scripts/temporary-folder.ts';
import { startFirefoxProcess } from './firefox-process.ts';

declare module 'vitest' {
  interface ProvidedContext {
    browserName: BrowserName;
    /** The folder of the unpacked test variant of this run. */
    extensionFolder: string;
    /** The profile of a browser that has been started before, or null: only Firefox starts much faster on one. */
    usedProfile: string | null;
  }
}

/** Built once for both browsers, each of which has this set-up run in the same process. */
const built = globalThis as { headroomBundle?: Promise<Bundle> };

/** Builds the extension as it is now into a folder of this run alone, so that no test looks at an older one. */
export default async function setup(project: TestProject): Promise<() => void> {
  sweepLeftovers();
  const top = temporaryFolder();
  const folder = path.join(top, 'extension');
  built.headroomBundle ??= bundleExtension();
  await writePackage(await built.headroomBundle, project.name as BrowserName, 'test', folder);
  project.provide('browserName', project.name as BrowserName);
  project.provide('extensionFolder', folder);
  const usedProfile = project.name === 'firefox' ? path.join(top, 'used-profile') : null;
  if (usedProfile !== null) await (await startFirefoxProcess(usedProfile)).quit();
  project.provide('usedProfile', usedProfile);
  return () => removeFolder(top);
}
