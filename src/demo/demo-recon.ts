import { cents } from '../domain/money/cents.ts';
import type { ReconLine } from '../domain/money/estimate.ts';
import { ppm } from '../domain/money/rate.ts';
import type { ReconTemplate } from '../domain/setup/recon-template.ts';

type Row = readonly [label: string, low: number, likely: number, high: number, percent?: number];

const lines = (...rows: readonly Row[]): ReconLine[] =>
  rows.map(([label, low, likely, high, percent = 100]) => ({
    label,
    amount: { low: cents(low * 100), likely: cents(likely * 100), high: cents(high * 100) },
    chance: ppm(percent * 10_000),
  }));

/** What the invented dealer's cars usually need, by class. */
export const demoReconTemplates = (): ReconTemplate[] => [
  {
    id: 'cargo-van',
    name: 'Cargo van, usual wear',
    carClass: 'Cargo van',
    models: ['Parcelman', 'Loadmate', 'Townlet'],
    lines: lines(
      ['Tires', 520, 640, 880, 60],
      ['Front brakes', 260, 340, 480, 50],
      ['Cargo floor and walls', 80, 150, 400],
      ['Detail', 140, 180, 240],
    ),
  },
  {
    id: 'work-truck',
    name: 'Work truck, usual wear',
    carClass: 'Pickup and service body',
    models: ['Hauler 20', 'Hauler 30', 'Paddock', 'Utility 15', 'Cutaway 40'],
    lines: lines(
      ['Tires', 760, 920, 1300, 60],
      ['Front end', 200, 450, 1100, 30],
      ['Remove decals', 120, 200, 420, 70],
      ['Detail', 160, 220, 300],
    ),
  },
  {
    id: 'box-truck',
    name: 'Box truck, usual wear',
    carClass: 'Box truck and flatbed',
    models: ['Boxline 12', 'Boxline 16', 'Flatbed 30'],
    lines: lines(
      ['Tires, all six', 1400, 1750, 2300, 60],
      ['Lift gate', 150, 380, 1200, 40],
      ['Box leaks and door', 120, 260, 700, 50],
      ['Detail', 200, 260, 340],
    ),
  },
];
