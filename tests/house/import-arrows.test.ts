import { existsSync } from 'node:fs';
import { build } from 'esbuild';
import { describe, expect, test } from 'vitest';
import { folderCircles } from './folder-circles.ts';
import { importsOf } from './imports.ts';
import { ROOMS, type Room, roomOf } from './rooms.ts';
import { type SourceFile, sourceFiles } from './source-files.ts';

const program = sourceFiles(['src', 'options-page'], ['.ts', '.tsx']);

/** Rooms whose folders are layers, too. */
const LAYERED = [
  'src/acts',
  'src/capture',
  'src/domain',
  'src/folds',
  'src/intake',
  'src/journal',
  'src/popup',
  'src/team',
  'src/ui',
  'src/views',
  'options-page',
] as const;

function arrowsAgainst(files: readonly SourceFile[]): readonly string[] {
  return files.flatMap((file) => {
    const room = roomOf(file.path);
    if (room === undefined) return [`${file.path} lies in no room`];
    const allowed: readonly string[] = [room, ...ROOMS[room]];
    return importsOf(file)
      .filter((target) => target.startsWith('src/') || target.startsWith('options-page/') || target.includes('../'))
      .filter((target) => !allowed.includes(roomOf(target) ?? ''))
      .map((target) => `${file.path} imports ${target}, but ${room} may not`);
  });
}

describe('the arrows between the rooms', () => {
  test('run one way, from the screens down to the core', () => {
    expect(arrowsAgainst(program)).toEqual([]);
  });

  test('are noticed when they run the other way, in types too', () => {
    const upward = [
      "import type { Row } from '../store/row.ts';",
      "export { draw } from '../ui/draw.tsx';",
      "import '../ui/look.css';",
      "const later = () => import('../popup/main.tsx');",
      "import { cents } from './money/cents.ts'; // import { no } from '../store/no.ts';",
    ].join('\n');
    expect(arrowsAgainst([{ path: 'src/domain/wrong.ts', text: upward }])).toEqual([
      'src/domain/wrong.ts imports src/store/row.ts, but src/domain may not',
      'src/domain/wrong.ts imports src/ui/draw.tsx, but src/domain may not',
      'src/domain/wrong.ts imports src/ui/look.css, but src/domain may not',
      'src/domain/wrong.ts imports src/popup/main.tsx, but src/domain may not',
    ]);
  });

  test('have no circle', () => {
    const reach = (room: Room, seen: readonly string[]): void => {
      for (const next of ROOMS[room]) {
        expect(seen).not.toContain(next);
        reach(next as Room, [...seen, next]);
      }
    };
    for (const room of Object.keys(ROOMS) as Room[]) reach(room, [room]);
  });

  test.each(LAYERED)('have no circle of folders within %s either', (room) => {
    expect(folderCircles(room, program)).toEqual([]);
  });

  test('a circle of folders would be seen, in types too', () => {
    const text = (target: string) => `import type { One } from '${target}';`;
    const files = [
      { path: 'src/domain/fees/fee.ts', text: text('../price/price.ts') },
      { path: 'src/domain/price/price.ts', text: text('../money/cents.ts') },
      { path: 'src/domain/money/cents.ts', text: text('../fees/fee.ts') },
    ];
    expect(folderCircles('src/domain', files)).toEqual(['fees → price → money → fees']);
  });

  test('are read from the text as the bundler sees them', async () => {
    const entries = program.map((file) => file.path);
    const { metafile } = await build({
      entryPoints: entries,
      bundle: true,
      // Each file is an entry: shared parts are written once instead of a thousand times.
      splitting: true,
      format: 'esm',
      packages: 'external',
      outdir: 'out',
      write: false,
      metafile: true,
      logLevel: 'silent',
      external: ['*.css'],
      jsx: 'automatic',
      jsxImportSource: 'preact',
    });
    for (const file of program) {
      const bundled = metafile.inputs[file.path]?.imports.filter((one) => existsSync(one.path)) ?? [];
      expect(importsOf(file), file.path).toEqual(expect.arrayContaining(bundled.map((one) => one.path)));
    }
  });

  test('lead to every room that there is', () => {
    const rooms = new Set(program.map((file) => roomOf(file.path)));
    expect(Object.keys(ROOMS).filter((room) => !rooms.has(room as Room))).toEqual([]);
  });
});
