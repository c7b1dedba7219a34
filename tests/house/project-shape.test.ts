import { existsSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import pkg from '../../package.json' with { type: 'json' };
import { sourceFiles, topLevelEntries } from './source-files.ts';

const TOP_LEVEL = [
  'README.md',
  'DEVELOPERS.md',
  'LICENSE',
  'package.json',
  'package-lock.json',
  'tsconfig.json',
  'manifest',
  'src',
  'options-page',
  'tests',
  'scripts',
];

test('the top level holds what was agreed, and dot files', () => {
  expect(topLevelEntries().filter((entry) => !entry.startsWith('.') && !TOP_LEVEL.includes(entry))).toEqual([]);
});

describe('package.json', () => {
  const packages = Object.entries({ ...pkg.dependencies, ...pkg.devDependencies });

  test('pins every package to one version', () => {
    expect(packages.filter(([, version]) => !/^\d+\.\d+\.\d+$/.test(version))).toEqual([]);
  });

  test('starts every script through the one entry that can install what is missing', () => {
    const others = Object.entries(pkg.scripts).filter(([name, line]) => line !== `node scripts/run.mjs ${name}`);
    expect(others).toEqual([]);
  });

  test('names nothing that DEVELOPERS.md gives no reason for', () => {
    const text = existsSync('DEVELOPERS.md') ? readFileSync('DEVELOPERS.md', 'utf8') : '';
    // The typings of a package come with it, and some go by the second half of their name.
    const named = (name: string) => text.includes(name) || text.includes(name.split('/')[1] ?? name);
    const reasonless = packages.map(([name]) => name).filter((name) => !name.startsWith('@types/') && !named(name));
    expect(reasonless).toEqual([]);
  });
});

test('nothing speaks of how the work is organised or of one machine', () => {
  // In pieces, so that this line is not found itself.
  const words = [
    'seed docu',
    'ment|tran',
    'script|\\b(?:ce',
    'o|steering re',
    'po)\\b|/(?:wo',
    'rk|fa',
    'rm|tm',
    'p)/',
  ];
  const numbers = ['|\\b(?:iss', 'ue|pull req', 'uest)s? #?\\d+'];
  const pattern = new RegExp([...words, ...numbers].join(''), 'i');
  const ours = ['src', 'options-page', 'manifest', 'scripts', 'tests'];
  const files = sourceFiles(ours, ['.ts', '.tsx', '.mjs', '.mts', '.css', '.html', '.json', '.md', '.csv', '.txt']);
  const documents = ['README.md', 'DEVELOPERS.md'].filter((file) => existsSync(file));
  const all = [...files, ...documents.map((path) => ({ path, text: readFileSync(path, 'utf8') }))];
  const lines = all.flatMap((file) =>
    file.text
      .split('\n')
      .filter((line) => pattern.test(line))
      .map((line) => `${file.path}: ${line.trim().slice(0, 120)}`),
  );
  expect(lines).toEqual([]);
  expect(pattern.test(`/${'wo'}${'rk'}/main`)).toBe(true);
});
