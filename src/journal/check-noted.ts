import type { ChainHead } from './chain-head.ts';

/**
 * What a noted fingerprint says of a file: it is `kept` when that entry is there with that hash; `broken` when another
 * stands in its place, or it should be there and is not; `not there` when the file begins after it, so that it says nothing.
 */
export interface NotedFound {
  readonly noted: ChainHead;
  readonly as: 'kept' | 'broken' | 'not there';
  /** A sentence, where it is not kept. */
  readonly message: string;
}

/** @param links of the file, each device's in the order of its numbers */
export function checkNoted(
  noted: ChainHead,
  links: readonly { readonly sequence: number; readonly hash: string }[] | undefined,
): NotedFound {
  const { device, sequence, hash } = noted;
  const there = links?.find((link) => link.sequence === sequence);
  const name = `The noted fingerprint of entry number ${sequence} of device ${device}`;
  const [first] = links ?? [];
  if (there?.hash === hash) return { noted, as: 'kept', message: '' };
  if (there !== undefined)
    return {
      noted,
      as: 'broken',
      message: `Entry number ${sequence} of device ${device} is not the one you noted: the chain was rewritten.`,
    };
  if (first === undefined)
    return {
      noted,
      as: 'broken',
      message: `${name} can’t be compared: nothing of that device is in this file. It was left out, or wrote nothing of this.`,
    };
  return sequence < first.sequence
    ? {
        noted,
        as: 'not there',
        message: `${name} can’t be compared: of that device this file begins with number ${first.sequence}.`,
      }
    : {
        noted,
        as: 'broken',
        message: `${name} is not in this file: the chain was cut short before it, or the file is older.`,
      };
}

/** Links by their device, in their order. */
export function linksByDevice<Link extends { readonly device: string }>(links: readonly Link[]): Map<string, Link[]> {
  const chains = new Map<string, Link[]>();
  for (const link of links) {
    const chain = chains.get(link.device);
    if (chain === undefined) chains.set(link.device, [link]);
    else chain.push(link);
  }
  return chains;
}
