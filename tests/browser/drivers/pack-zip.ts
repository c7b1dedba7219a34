import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { crc32 } from 'node:zlib';

/** 1 January 1980, the first day a zip file knows. */
const FIRST_DAY = 0x21;

/** All files below `folder` as a zip archive (PKWARE APPNOTE 4.3), stored without compression. */
export function packZip(folder: string): Buffer {
  const names = readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) => path.relative(folder, path.join(entry.parentPath, entry.name)).replaceAll(path.sep, '/'));
  const contents: Buffer[] = [];
  const directory: Buffer[] = [];
  let offset = 0;
  for (const name of names) {
    const data = readFileSync(path.join(folder, name));
    const shared = sharedFields(name, data);
    const local = Buffer.concat([numbers([4, 0x04034b50]), shared, Buffer.from(name), data]);
    // Comment length, disk, internal and external attributes, then where the file begins.
    const rest = numbers([2, 0], [2, 0], [2, 0], [4, 0], [4, offset]);
    directory.push(numbers([4, 0x02014b50], [2, 20]), shared, rest, Buffer.from(name));
    contents.push(local);
    offset += local.length;
  }
  const list = Buffer.concat(directory);
  const count = names.length;
  const end = numbers([4, 0x06054b50], [2, 0], [2, 0], [2, count], [2, count], [4, list.length], [4, offset], [2, 0]);
  return Buffer.concat([...contents, list, end]);
}

function sharedFields(name: string, data: Buffer): Buffer {
  // Version, names in UTF-8, no compression, time, date, then check sum and the sizes; no extra field.
  return numbers(
    [2, 20],
    [2, 0x0800],
    [2, 0],
    [2, 0],
    [2, FIRST_DAY],
    [4, crc32(data)],
    [4, data.length],
    [4, data.length],
    [2, Buffer.byteLength(name)],
    [2, 0],
  );
}

/** Little-endian numbers, each with its width in bytes. */
function numbers(...fields: readonly (readonly [width: 2 | 4, value: number])[]): Buffer {
  const buffer = Buffer.alloc(fields.reduce((sum, [width]) => sum + width, 0));
  let at = 0;
  for (const [width, value] of fields) at = buffer.writeUIntLE(value, at, width);
  return buffer;
}
