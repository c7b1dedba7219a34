import { bytesToHex, hexToBytes } from '@noble/hashes/utils.js';

export const hexOf = (bytes: Uint8Array): string => bytesToHex(bytes);

/** @throws where it is not hexadecimal; whoever calls has checked that */
export const bytesOfHex = (text: string): Uint8Array => hexToBytes(text);
