import { readFileSync } from 'node:fs';
import path from 'node:path';
import { inflateSync } from 'node:zlib';
import { describe, expect, test } from 'vitest';
import { drawIcon } from '../../scripts/draw-icon.ts';
import { withoutInnerHtml } from '../../scripts/no-inner-html.ts';
import { countTests, saySlowest, timedFiles } from '../../scripts/vitest-step.ts';

describe('counting tests', () => {
  const file = (status: string, ...tests: readonly string[]) => ({
    name: 'tests/any.test.ts',
    startTime: 0,
    endTime: 0,
    status,
    assertionResults: tests.map((one) => ({ status: one })),
  });
  const count = (status: number, ...testResults: readonly ReturnType<typeof file>[]) =>
    countTests({ testResults }, status);

  test('counts each test once', () => {
    expect(count(0, file('passed', 'passed', 'passed'), file('passed', 'passed'))).toEqual({ passed: 3, failed: 0 });
  });

  test('takes a test that did not run for one that failed', () => {
    const statuses = ['failed', 'skipped', 'pending', 'todo', 'disabled'];
    expect(count(1, file('failed', 'passed', ...statuses))).toEqual({ passed: 1, failed: 5 });
    expect(count(0, file('passed', 'passed', 'pending'))).toEqual({ passed: 1, failed: 1 });
  });

  test('takes a file that could not be loaded for a failure', () => {
    expect(count(1, file('passed', 'passed'), file('failed'))).toEqual({ passed: 1, failed: 1 });
  });

  test('takes a run without a report, without tests or with another error for a failure', () => {
    expect(countTests(undefined, 0)).toEqual({ passed: 0, failed: 1 });
    expect(count(0)).toEqual({ passed: 0, failed: 1 });
    expect(count(1, file('passed', 'passed'))).toEqual({ passed: 1, failed: 1 });
  });
});

test('the slowest test files come first, one that ran in two browsers with both', () => {
  const ran = (name: string, startTime: number, endTime: number) => ({
    name: path.resolve(name),
    startTime,
    endTime,
    status: 'passed',
    assertionResults: [],
  });
  const testResults = [
    ran('tests/a.test.ts', 1000, 3000),
    ran('tests/b.test.ts', 0, 2500),
    ran('tests/a.test.ts', 0, 1000),
  ];
  expect(saySlowest(timedFiles({ testResults }), 1)).toBe('    3.0 s  tests/a.test.ts');
  expect(timedFiles(undefined)).toEqual([]);
});

describe('the page library without its way to parse markup', () => {
  test('is what is shipped', () => {
    const preact = readFileSync('node_modules/preact/dist/preact.mjs', 'utf8');
    expect(withoutInnerHtml(preact)).not.toMatch(/\.innerHTML=[^=]/);
  });

  test('stops the build when it has changed so that the replacement does not fit', () => {
    expect(() => withoutInnerHtml('export const nothing = 1;')).toThrow(/no-inner-html/);
    expect(() => withoutInnerHtml('t.innerHTML=h.__html;u.outerHTML=x;')).toThrow(/no-inner-html/);
  });
});

describe('the icon', () => {
  test.each([16, 32, 48, 128])('is a picture of %i pixels each way', (size) => {
    const png = Buffer.from(drawIcon(size));
    expect([png.readUInt32BE(16), png.readUInt32BE(20)]).toEqual([size, size]);
    const length = png.readUInt32BE(33);
    expect(inflateSync(png.subarray(41, 41 + length))).toHaveLength(size * (1 + size * 4));
  });

  test('has clear corners, paper above the ceiling and ink in the stairs', () => {
    const png = Buffer.from(drawIcon(16));
    const rows = inflateSync(png.subarray(41, 41 + png.readUInt32BE(33)));
    const pixel = (x: number, y: number) => [...rows.subarray(y * 65 + 1 + x * 4, y * 65 + 5 + x * 4)];
    expect(pixel(0, 0)[3]).toBeLessThan(128);
    expect(pixel(8, 1)).toEqual([0xfa, 0xf7, 0xf0, 255]);
    expect(pixel(3, 10)).toEqual([0x0b, 0x5d, 0x66, 255]);
  });
});
