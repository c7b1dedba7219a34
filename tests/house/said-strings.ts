import { parseSync } from 'oxc-parser';
import { type SourceFile, sourceFiles } from './source-files.ts';

/** One text that a user may read: a string, a piece of a template or of markup, or a line of a document. */
export interface Said {
  readonly path: string;
  readonly text: string;
}

const PROGRAM = ['.ts', '.tsx', '.mjs'];

/**
 * Every text of these folders that may be shown to a user. A single word in lower case is left out, because most of these
 * are keys; so are the names of imported files.
 */
export function saidStrings(folders: readonly string[]): readonly Said[] {
  return sourceFiles(folders, PROGRAM).flatMap((file) => stringsOf(file).map((text) => ({ path: file.path, text })));
}

function stringsOf({ path, text }: SourceFile): readonly string[] {
  const found: string[] = [];
  collect(parseSync(path, text).program, found);
  return found.filter((each) => /[A-Z]|\s\S/.test(each));
}

function collect(node: unknown, found: string[]): void {
  if (Array.isArray(node)) {
    for (const each of node) collect(each, found);
    return;
  }
  if (typeof node !== 'object' || node === null) return;
  const { type, value } = node as { type?: string; value?: unknown };
  if (type === 'ImportDeclaration' || type === 'ExportAllDeclaration') return;
  if (type === 'Literal' && typeof value === 'string') found.push(value);
  if (type === 'JSXText') found.push(String(value).replace(/\s+/g, ' ').trim());
  if (type === 'TemplateElement') found.push((value as { cooked: string }).cooked);
  for (const [key, child] of Object.entries(node)) if (key !== 'parent') collect(child, found);
}
