import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';

export interface SourceFile {
  /** From the top of the project, with forward slashes. */
  readonly path: string;
  readonly text: string;
}

/** What belongs to the project at its top level: all but git's own folder and what .gitignore names. */
export function topLevelEntries(): readonly string[] {
  const ignored = readFileSync('.gitignore', 'utf8')
    .split('\n')
    .map((line) => line.trim().replace(/\/$/, ''));
  return readdirSync('.').filter((entry) => entry !== '.git' && !ignored.includes(entry) && !entry.endsWith('.log'));
}

/** Every file below `folders` whose name ends in one of `endings`, invented pages and other fixtures left out. */
export function sourceFiles(folders: readonly string[], endings: readonly string[]): readonly SourceFile[] {
  return folders.flatMap((folder) =>
    readdirSync(folder, { recursive: true, withFileTypes: true })
      .filter((entry) => entry.isFile() && endings.some((ending) => entry.name.endsWith(ending)))
      .map((entry) => path.join(entry.parentPath, entry.name).replaceAll(path.sep, '/'))
      .filter((file) => !file.includes('/fixtures/'))
      .sort()
      .map((file) => ({ path: file, text: readFileSync(file, 'utf8') })),
  );
}

/** Strings come first, and are left alone or blanked as a whole, so that "//" inside one is not taken for a comment. */
const STRINGS_AND_COMMENTS = /'(?:[^'\\\n]|\\.)*'|"(?:[^"\\\n]|\\.)*"|`(?:[^`\\]|\\.)*`|\/\*[\s\S]*?\*\/|\/\/[^\n]*/g;

/** The text of a program with comments blanked, line by line, so that rules about code do not read prose. */
export function withoutComments(text: string): string {
  return text.replace(STRINGS_AND_COMMENTS, (match) => (match.startsWith('/') ? blank(match) : match));
}

/** The text of a program with comments and the insides of strings blanked. */
export function codeAlone(text: string): string {
  return text.replace(STRINGS_AND_COMMENTS, (match) =>
    match.startsWith('/') ? blank(match) : `${match[0]}${blank(match.slice(1, -1))}${match[0]}`,
  );
}

function blank(text: string): string {
  return text.replace(/[^\n]/g, ' ');
}
