import type { Metafile } from 'esbuild';

/**
 * The files of the package that an entry of it loads: itself, its style sheet and all it imports; with `later` also what
 * it imports once it runs.
 */
export function loadedBy(metafile: Metafile, entry: string, later: boolean): ReadonlySet<string> {
  const seen = new Set<string>();
  const waiting = [entry];
  for (let file = waiting.pop(); file !== undefined; file = waiting.pop()) {
    const output = metafile.outputs[file];
    if (output === undefined || seen.has(file)) continue;
    seen.add(file);
    if (output.cssBundle) waiting.push(placeOf(output.cssBundle));
    for (const { path, kind } of output.imports) {
      if (kind === 'import-statement' || (later && kind === 'dynamic-import')) waiting.push(placeOf(path));
    }
  }
  return seen;
}

function placeOf(output: string): string {
  return output.replace(/^out\//, '');
}
