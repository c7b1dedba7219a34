import { rmSync } from 'node:fs';
import path from 'node:path';
import { pathToFileURL } from 'node:url';

/**
 * Imports a TypeScript file of this project: Node 20 can't, so esbuild bundles it first. Packages stay outside the
 * bundle. Paths in such a file are relative to the top of the project, which is the working directory.
 */
export async function loadTypescript(file) {
  const { build } = await import('esbuild');
  // Inside node_modules, so that the packages are found from there; one name a process, so that two runs can't mix.
  const bundle = path.resolve('node_modules/.cache/headroom', `${file.replaceAll('/', '-')}-${process.pid}.mjs`);
  try {
    await build({
      entryPoints: [file],
      outfile: bundle,
      bundle: true,
      packages: 'external',
      platform: 'node',
      format: 'esm',
      target: 'node20',
      jsx: 'automatic',
      jsxImportSource: 'preact',
      // A screen that is written as markup brings its style sheet along, which is for browsers.
      loader: { '.css': 'empty' },
      sourcemap: 'inline',
      logLevel: 'warning',
    });
    return await import(pathToFileURL(bundle).href);
  } finally {
    rmSync(bundle, { force: true });
  }
}
