import { existsSync } from 'node:fs';
import { cp, mkdir, readdir, readFile, rm, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { type BuildOptions, build, type Metafile } from 'esbuild';
import { type BrowserName, manifest, type Variant } from '../manifest/manifest.ts';
import { drawIcon } from './draw-icon.ts';
import { type FIRST_FRAMES, firstFrame } from './first-frame.ts';
import { loadedBy } from './loaded-by.ts';
import { noInnerHtml } from './no-inner-html.ts';

/** Everything both browsers share: the files by their place in the package, and how each came about. */
export interface Bundle {
  readonly files: ReadonlyMap<string, Uint8Array>;
  readonly metafile: Metafile;
}

const BACKGROUND = { background: 'src/background/main.ts' };
/** Makes the plan where the background is a page: Firefox alone. */
const PLAN_THREAD = { 'plan-worker': 'src/background/plan-worker.ts' };
const POPUP = { 'popup/main': 'src/popup/main.tsx' };
const FIRST = { 'options-page/first': 'options-page/first.tsx' };
const COMPANION = { 'options-page/main': 'options-page/main.tsx' };
/** Loaded only where there is a team, by whichever of the others is open. */
const TEAM = { 'team/program': 'src/team-program/program.ts', 'team/offscreen': 'src/team-program/offscreen.ts' };
/** By this address the others load it. */
const TEAM_PROGRAM = '/team/program.js';
const READER = { 'injected/reader': 'src/injected/reader.ts' };
const HTML = {
  'popup/popup.html': 'src/popup/popup.html',
  'options-page/index.html': 'options-page/index.html',
  'team/team.html': 'src/team-program/team.html',
};
/** Read by the program as text, and put into evidence packs: in one file, to be read by people and run by them. */
const PACK_SCRIPT = { place: 'evidence/verify-pack.txt', source: 'scripts/verify-pack.mjs' };
const ICON_SIZES = [16, 32, 48, 128];

const SHARED: BuildOptions = {
  outdir: 'out',
  bundle: true,
  write: false,
  metafile: true,
  minify: true,
  target: ['chrome127', 'firefox140'],
  jsx: 'automatic',
  jsxImportSource: 'preact',
  loader: { '.woff2': 'file' },
  assetNames: 'fonts/[name]-[hash]',
  chunkNames: 'chunks/[name]-[hash]',
  legalComments: 'none',
  logLevel: 'warning',
  define: { TEAM_PROGRAM: JSON.stringify(TEAM_PROGRAM) },
  external: [TEAM_PROGRAM],
  plugins: [noInnerHtml],
};

/** Bundles the program. Throws a sentence when an entry is missing; esbuild prints what else is wrong. */
export async function bundleExtension(): Promise<Bundle> {
  for (const entry of [BACKGROUND, PLAN_THREAD, TEAM, READER, POPUP, FIRST, COMPANION, HTML].flatMap((entries) =>
    Object.values(entries),
  )) {
    if (!existsSync(entry)) throw new Error(`${entry} is missing, so there is nothing to build the extension from.`);
  }
  const results = await Promise.all([
    // One file each: a worker starts faster without further files, and an injected script can't load any.
    build({ ...SHARED, entryPoints: BACKGROUND, format: 'esm' }),
    build({ ...SHARED, entryPoints: TEAM, format: 'esm' }),
    build({ ...SHARED, entryPoints: PLAN_THREAD, format: 'esm' }),
    build({ ...SHARED, entryPoints: READER, format: 'iife' }),
    // One small file that need not wait for the page's own: what it asks for is on its way while the page is read.
    build({
      ...SHARED,
      entryPoints: FIRST,
      format: 'iife',
      alias: { 'preact/jsx-runtime': './options-page/first/plain-jsx.ts' },
    }),
    // Each page by itself: shared with the other it would come in two dozen small files, and open later for it.
    build({ ...SHARED, entryPoints: POPUP, format: 'esm', splitting: true }),
    build({ ...SHARED, entryPoints: COMPANION, format: 'esm', splitting: true }),
  ]);
  const files = new Map<string, Uint8Array>();
  const metafile: Metafile = { inputs: {}, outputs: {} };
  for (const result of results) {
    for (const { path: file, contents } of result.outputFiles ?? []) {
      // The style sheets of screens that are loaded later are in the page's own already; nothing asks for these.
      if (!/^chunks\/.*\.css$/.test(inPackage(file))) files.set(inPackage(file), contents);
    }
    Object.assign(metafile.inputs, result.metafile?.inputs);
    for (const [file, output] of Object.entries(result.metafile?.outputs ?? {})) {
      metafile.outputs[inPackage(file)] = output;
    }
  }
  for (const size of ICON_SIZES) files.set(`icons/${size}.png`, drawIcon(size));
  files.set(PACK_SCRIPT.place, await packScript());
  for (const [place, source] of Object.entries(HTML)) {
    const html = withFirstFrame(withPreloads(await readFile(source, 'utf8'), place, metafile));
    files.set(place, new TextEncoder().encode(html));
  }
  for (const place of Object.keys(HTML)) demandLinkedFiles(place, files);
  return { files, metafile };
}

/** The script that checks a pack, in one file with its main comments, and nothing in it made shorter. */
export async function packScript(): Promise<Uint8Array> {
  const { outputFiles } = await build({
    entryPoints: [PACK_SCRIPT.source],
    bundle: true,
    write: false,
    platform: 'node',
    format: 'esm',
    charset: 'utf8',
    legalComments: 'inline',
    logLevel: 'warning',
  });
  const [file] = outputFiles;
  if (file === undefined) throw new Error(`${PACK_SCRIPT.source} gave no file.`);
  return file.contents;
}

/** All files of one browser's package, by their place in it. */
export function packageFiles(bundle: Bundle, browser: BrowserName, variant: Variant): ReadonlyMap<string, Uint8Array> {
  const text = `${JSON.stringify(manifest(browser, variant), null, 2)}\n`;
  const files = new Map([...bundle.files, ['manifest.json', new TextEncoder().encode(text)] as const]);
  if (browser === 'chromium') files.delete('plan-worker.js');
  return files;
}

/** Writes the package of one browser into `folder`, which is emptied first. */
export async function writePackage(bundle: Bundle, browser: BrowserName, variant: Variant, folder: string) {
  await rm(folder, { recursive: true, force: true });
  for (const [place, contents] of packageFiles(bundle, browser, variant)) {
    await mkdir(path.dirname(path.join(folder, place)), { recursive: true });
    await writeFile(path.join(folder, place), contents);
  }
  if (variant === 'test') await addTestPages(folder);
}

/** Pages without any program of ours, from which tests ask the browser and against which benchmarks compare. */
async function addTestPages(folder: string): Promise<void> {
  const source = 'tests/browser/drivers/bare-pages';
  for (const file of await readdir(source)) await cp(path.join(source, file), path.join(folder, 'bare-pages', file));
}

function inPackage(file: string): string {
  return path.relative('out', path.relative(process.cwd(), path.resolve(file))).replaceAll(path.sep, '/');
}

const SCRIPT = /<script (?:type="module" |async )?src="([^"]+)"/;
const LATER = /(<meta name="later" content=")([^ "]+)([^"]*)"/;

/** A page that names all parts of its program at once, so that they are not asked for one after the other. */
function withPreloads(html: string, place: string, metafile: Metafile): string {
  const folder = path.posix.dirname(place);
  const partsOf = (program: string): string[] =>
    [...loadedBy(metafile, path.posix.join(folder, program), false)]
      .map((file) => path.posix.relative(folder, file))
      .filter((file) => file !== program && file.endsWith('.js'))
      .sort();
  const [, first = ''] = SCRIPT.exec(html) ?? [];
  const now = partsOf(first);
  const links = now.map((href) => `<link rel="modulepreload" href="${href}" />\n    `);
  return html
    .replace('<script type="module"', (script) => `${links.join('')}${script}`)
    .replace(LATER, (_, start: string, program: string, style: string) => {
      const later = partsOf(program).filter((part) => !now.includes(part));
      return `${start}${[program + style, ...later].join(' ')}"`;
    });
}

/** A page that has the first frames in it as markup: the list's for a wide screen and for a narrow one, and the books'. */
function withFirstFrame(html: string): string {
  return html.replace(
    /<template id="(first-[a-z]+)">/g,
    (start, name: keyof typeof FIRST_FRAMES) => start + firstFrame(name),
  );
}

function demandLinkedFiles(page: string, files: ReadonlyMap<string, Uint8Array>): void {
  const html = new TextDecoder().decode(files.get(page));
  const links = [...html.matchAll(/\b(?:src|href)="([^"#:]+)"/g)].map(([, link = '']) => link);
  const [, , program = '', rest = ''] = LATER.exec(html) ?? [];
  for (const link of [...links, ...(program + rest).split(' ').filter(Boolean)]) {
    const place = path.posix.join(path.posix.dirname(page), link);
    if (!files.has(place)) throw new Error(`${page} asks for ${link}, but the build makes no ${place}.`);
  }
}
