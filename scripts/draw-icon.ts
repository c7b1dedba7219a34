import { BLOCKS, INK, PAPER } from '../manifest/icon-shape.ts';
import { encodePng } from './encode-png.ts';

/** Samples a pixel is divided into each way, for smooth corners. */
const SAMPLES = 4;
const GRID = 16;

/** The extension's icon as a PNG picture of `size` by `size` pixels. */
export function drawIcon(size: number): Uint8Array {
  const rgba = new Uint8Array(size * size * 4);
  const paper = channels(PAPER.colour);
  const ink = channels(INK);
  for (let y = 0; y < size; y++) {
    for (let x = 0; x < size; x++) {
      const { paperShare, inkShare } = coverage(x, y, size);
      const at = (y * size + x) * 4;
      for (let c = 0; c < 3; c++) {
        rgba[at + c] = Math.round((ink[c] ?? 0) * inkShare + (paper[c] ?? 0) * (1 - inkShare));
      }
      rgba[at + 3] = Math.round(255 * paperShare);
    }
  }
  return encodePng(size, size, rgba);
}

function coverage(x: number, y: number, size: number): { paperShare: number; inkShare: number } {
  let onPaper = 0;
  let onInk = 0;
  for (let sy = 0; sy < SAMPLES; sy++) {
    for (let sx = 0; sx < SAMPLES; sx++) {
      const u = ((x + (sx + 0.5) / SAMPLES) * GRID) / size;
      const v = ((y + (sy + 0.5) / SAMPLES) * GRID) / size;
      if (insidePaper(u, v)) onPaper++;
      if (BLOCKS.some((b) => u >= b.left && u < b.right && v >= b.top && v < b.bottom)) onInk++;
    }
  }
  const all = SAMPLES * SAMPLES;
  return { paperShare: onPaper / all, inkShare: onInk / all };
}

function insidePaper(u: number, v: number): boolean {
  const r = PAPER.cornerRadius;
  const dx = Math.max(r - u, u - (GRID - r), 0);
  const dy = Math.max(r - v, v - (GRID - r), 0);
  return dx * dx + dy * dy <= r * r;
}

function channels(colour: string): readonly number[] {
  return [1, 3, 5].map((at) => Number.parseInt(colour.slice(at, at + 2), 16));
}
