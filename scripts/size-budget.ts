import { gzipSync } from 'node:zlib';
import type { Bundle } from './build-extension.ts';

/** One thing that has to be small, in bytes as the browser loads them from disk (not compressed). */
interface Size {
  readonly what: string;
  readonly bytes: number;
  readonly gzipped: number;
  readonly limit: number;
}

const KB = 1000;

/**
 * How much is loaded before each part can begin. Set a little above what was needed when they were last looked at:
 * raise one only together with the reason for it.
 */
const LIMITS = {
  background: 120 * KB,
  popup: 220 * KB,
  'page reader': 120 * KB,
  'companion page, before its first picture': 260 * KB,
  'companion page, all screens': 600 * KB,
} as const;

/** The size of each part against its limit; a font is shown late, so only programs and style sheets count. */
export function sizes(bundle: Bundle): readonly Size[] {
  const parts: Record<keyof typeof LIMITS, ReadonlySet<string>> = {
    background: loadedBy(bundle, 'background.js', false),
    popup: loadedBy(bundle, 'popup/main.js', false),
    'page reader': loadedBy(bundle, 'capture/inject.js', false),
    'companion page, before its first picture': loadedBy(bundle, 'options-page/main.js', false),
    'companion page, all screens': loadedBy(bundle, 'options-page/main.js', true),
  };
  return Object.entries(LIMITS).map(([what, limit]) => {
    const contents = [...parts[what as keyof typeof LIMITS]].map((file) => bundle.files.get(file) ?? new Uint8Array());
    const sum = (measure: (content: Uint8Array) => number) => contents.reduce((total, c) => total + measure(c), 0);
    return { what, limit, bytes: sum((c) => c.length), gzipped: sum((c) => gzipSync(c).length) };
  });
}

/** One line a part, and a sentence for each that is too large. */
export function sizeReport(all: readonly Size[]): { readonly lines: readonly string[]; readonly tooLarge: string[] } {
  const kilo = (bytes: number) => `${(bytes / KB).toFixed(1)} KB`.padStart(9);
  return {
    lines: all.map((s) => `${s.what.padEnd(42)}${kilo(s.bytes)} of ${kilo(s.limit)}, gzipped ${kilo(s.gzipped)}`),
    tooLarge: all
      .filter((s) => s.bytes > s.limit)
      .map((s) => `${s.what} is over its size budget: ${kilo(s.bytes).trim()} of ${kilo(s.limit).trim()}.`),
  };
}

/** The entry, its style sheet and all it imports; with `later` also what it imports once it runs. */
function loadedBy(bundle: Bundle, entry: string, later: boolean): ReadonlySet<string> {
  const seen = new Set<string>();
  const waiting = [entry];
  for (let file = waiting.pop(); file !== undefined; file = waiting.pop()) {
    const output = bundle.metafile.outputs[file];
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
