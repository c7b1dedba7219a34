import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { Surface } from './drivers/browser.ts';

/** The program that `violations` needs in the page. */
export const AXE = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

/** What axe finds against WCAG 2.2 A and AA, each with where. */
export function violations(surface: Surface): Promise<string[]> {
  return surface.run(async () => {
    const { axe } = globalThis as unknown as {
      axe: { run: (options: object) => Promise<{ violations: { id: string; nodes: { target: string[] }[] }[] }> };
    };
    const found = await axe.run({
      runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'],
      resultTypes: ['violations'],
    });
    return found.violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ target }) => target.join(' ')).join(', ')}`);
  });
}
