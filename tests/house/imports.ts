import path from 'node:path';
import { type SourceFile, withoutComments } from './source-files.ts';

const IMPORT =
  /(?:^|[;}\s])(?:import|export)\s+(?:type\s+)?[\w*{}\s,$]+?\s+from\s+['"]([^'"]+)['"]|(?:^|[;}\s])import\s+['"]([^'"]+)['"]|\bimport\(\s*['"]([^'"]+)['"]\s*\)/g;

/** What a file imports, types included: paths from the top of the project, packages by their name as written. */
export function importsOf(file: SourceFile): readonly string[] {
  return [...withoutComments(file.text).matchAll(IMPORT)].map((match) => {
    const target = match[1] ?? match[2] ?? match[3] ?? '';
    return target.startsWith('.') ? path.posix.join(path.posix.dirname(file.path), target) : target;
  });
}

/** The name of the package behind an import of one: `zod` for `zod/mini`. */
export function packageName(target: string): string {
  const depth = target.startsWith('@') ? 2 : 1;
  return target.split('/').slice(0, depth).join('/');
}
