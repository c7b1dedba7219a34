import { crc32, deflateSync } from 'node:zlib';

/** A picture as PNG (ISO/IEC 15948), with noise so that it can't shrink. */
export function png(width: number, height: number, noise: (bytes: number) => Uint8Array): Uint8Array<ArrayBuffer> {
  const rows = Buffer.alloc(height * (1 + width * 3));
  for (let y = 0; y < height; y++) rows.set(noise(width * 3), y * (1 + width * 3) + 1);
  const head = Buffer.alloc(13);
  head.writeUInt32BE(width, 0);
  head.writeUInt32BE(height, 4);
  head.set([8, 2, 0, 0, 0], 8);
  const parts = [
    Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]),
    chunk('IHDR', head),
    chunk('IDAT', deflateSync(rows)),
    chunk('IEND', Buffer.alloc(0)),
  ];
  return new Uint8Array(Buffer.concat(parts));
}

function chunk(name: string, bytes: Buffer): Buffer {
  const body = Buffer.concat([Buffer.from(name, 'latin1'), bytes]);
  const whole = Buffer.alloc(body.length + 8);
  whole.writeUInt32BE(bytes.length, 0);
  whole.set(body, 4);
  whole.writeUInt32BE(crc32(body), body.length + 4);
  return whole;
}
