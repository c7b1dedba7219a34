import { sha256 } from '@noble/hashes/sha2.js';
import { bytesToHex } from '@noble/hashes/utils.js';
import { fromBase64 } from '../../journal/base64.ts';
import type { Slices } from '../journal/slices.ts';
import { type FileHeader, fileHeaderSchema, filePartSchema } from './backup-format.ts';
import { hashInSlices } from './hash-in-slices.ts';

/** The attached files of a backup as far as they have been read, each checked against its hash. */
export class FilesReading {
  /** Those that are whole. */
  readonly files = new Map<string, Blob>();
  private open: OpenFile | null = null;

  /** Takes a line. False when it is neither the head of a file nor bytes of one, or the file before it is not whole. */
  async take(value: unknown, slices: Slices): Promise<boolean> {
    const part = filePartSchema.safeParse(value);
    if (part.success) return (await this.open?.add(part.data.bytes, slices)) ?? false;
    const head = fileHeaderSchema.safeParse(value);
    if (!head.success || !this.close() || this.files.has(head.data.file.hash)) return false;
    this.open = new OpenFile(head.data);
    return true;
  }

  /** Whether the last file is whole; call it at the end. */
  close(): boolean {
    if (this.open === null) return true;
    const blob = this.open.whole();
    if (blob === null) return false;
    this.files.set(this.open.hash, blob);
    this.open = null;
    return true;
  }
}

class OpenFile {
  readonly hash: string;
  private readonly sizeBytes: number;
  private readonly mediaType: string;
  private readonly digest = sha256.create();
  private readonly parts: Blob[] = [];
  private read = 0;

  constructor({ file: { hash, sizeBytes, mediaType } }: FileHeader) {
    this.hash = hash;
    this.sizeBytes = sizeBytes;
    this.mediaType = mediaType;
  }

  async add(base64: string, slices: Slices): Promise<boolean> {
    const bytes = fromBase64(base64);
    if (bytes === null || bytes.length === 0) return false;
    await hashInSlices(this.digest, bytes, slices);
    this.read += bytes.length;
    // Handed to the browser at once, which may put it on the disk.
    this.parts.push(new Blob([bytes]));
    return true;
  }

  whole(): Blob | null {
    if (this.read !== this.sizeBytes || bytesToHex(this.digest.digest()) !== this.hash) return null;
    return new Blob(this.parts, { type: this.mediaType });
  }
}
