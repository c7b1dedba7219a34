/*! Every line by itself, and after the one before it. */
import { RULES } from './hashes.mjs';

export const nameOf = ({ sequence, device }) => `Entry number ${sequence} of device ${device}`;

export function checkLines({ links, wrong, told }) {
  let salted = false;
  for (const { kind, ...link } of links) {
    const name = nameOf(link);
    const again = RULES[kind](link);
    if (again === null) wrong.push(`${name}: the row that is shown can't be one of this batch.`);
    else if (again !== link.hash) wrong.push(`${name} was changed after it was written.`);
    if ((link.sequence === 1) !== (link.previous === '')) wrong.push(`${name} is wrong about what came before it.`);
    if (kind !== 'bare' && link.at > timeOf(link.id)) wrong.push(`${name} gives a later time than its own id.`);
    const hasSalt = kind === 'held' || kind === 'batch' || 'salt' in link;
    if (salted && !hasSalt) wrong.push(`${name} has no salt, though entries before it have.`);
    salted ||= hasSalt;
  }
  const bare = links.filter(({ kind }) => kind === 'bare');
  if (bare.length > 0)
    told.push(
      `Taken on trust, since they are of the earliest kind: ${bare.map(short).join(', ')}. Nothing binds what stands before them to what follows.`,
    );
}

export const short = ({ sequence, device }) => `number ${sequence} of ${device}`;
const LETTERS = '0123456789ABCDEFGHJKMNPQRSTVWXYZ';
const timeOf = (id) => [...id.slice(0, 10)].reduce((sum, letter) => sum * 32 + LETTERS.indexOf(letter), 0);

export function checkChains({ head, links, wrong, told }) {
  const last = new Map();
  let lastId = '';
  for (const link of links) {
    const name = nameOf(link);
    if (!(link.id > lastId)) wrong.push(`${name} is out of order.`);
    lastId = link.id;
    const before = last.get(link.device);
    if (before !== undefined && link.sequence !== before.sequence + 1)
      wrong.push(`${name} follows number ${before.sequence}: something between is missing, or was inserted.`);
    else if (before !== undefined && link.previous !== before.hash)
      wrong.push(`${name} does not follow number ${before.sequence}: one of them was replaced.`);
    if (before === undefined && link.sequence > 1)
      told.push(
        `Of device ${link.device} this file begins with number ${link.sequence}; what came before it is not in it.`,
      );
    last.set(link.device, link);
  }
  for (const { device, sequence, hash } of head.heads) {
    const end = last.get(device);
    if (end?.sequence !== sequence || end?.hash !== hash)
      wrong.push(`The chain of device ${device} does not end with entry number ${sequence}, as the head says.`);
    last.delete(device);
  }
  for (const device of last.keys()) wrong.push(`Device ${device} is not named in the head.`);
}
