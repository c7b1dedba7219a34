import { importsOf } from './imports.ts';
import type { SourceFile } from './source-files.ts';

/** The folder a file lies in, one level below a room; null for what lies loose in the room. */
function folderIn(room: string, file: string): string | null {
  const parts = file.slice(room.length + 1).split('/');
  return file.startsWith(`${room}/`) && parts.length > 1 ? (parts[0] ?? null) : null;
}

/** Which folders of a room use which others. */
function folderArrows(room: string, files: readonly SourceFile[]): ReadonlyMap<string, ReadonlySet<string>> {
  const arrows = new Map<string, Set<string>>();
  for (const file of files) {
    const from = folderIn(room, file.path);
    if (from === null) continue;
    for (const target of importsOf(file)) {
      const to = folderIn(room, target);
      if (to === null || to === from) continue;
      arrows.set(from, (arrows.get(from) ?? new Set()).add(to));
    }
  }
  return arrows;
}

/** Each circle of folders that is found, as "a → b → a"; nothing where the folders form layers. */
export function folderCircles(room: string, files: readonly SourceFile[]): readonly string[] {
  const arrows = folderArrows(room, files);
  const done = new Set<string>();
  const circles: string[] = [];
  const walk = (folder: string, path: readonly string[]): void => {
    const at = path.indexOf(folder);
    if (at >= 0) circles.push([...path.slice(at), folder].join(' → '));
    if (at >= 0 || done.has(folder)) return;
    for (const next of [...(arrows.get(folder) ?? [])].sort()) walk(next, [...path, folder]);
    done.add(folder);
  };
  for (const folder of [...arrows.keys()].sort()) walk(folder, []);
  return circles;
}
