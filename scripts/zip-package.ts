import JSZip from 'jszip';

/** The first day that a zip file can name. A real date would make two packages of one program differ. */
const FIRST_DAY = new Date(Date.UTC(1980, 0, 1));

/**
 * Files as one zip archive whose bytes depend on nothing but their names and contents.
 * @param files contents by their place in the archive, in any order
 */
export function zipPackage(files: ReadonlyMap<string, Uint8Array>): Promise<Uint8Array> {
  const archive = new JSZip();
  for (const [place, contents] of [...files].sort(([a], [b]) => (a < b ? -1 : 1))) {
    archive.file(place, contents, { date: FIRST_DAY, createFolders: false, unixPermissions: 0o644 });
  }
  return archive.generateAsync({
    type: 'uint8array',
    platform: 'UNIX',
    compression: 'DEFLATE',
    compressionOptions: { level: 9 },
  });
}
