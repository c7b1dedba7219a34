/*! What the server of a team and its other devices say of the chains. */
import { canonical } from './hashes.mjs';
import { fits } from './noted.mjs';

/** Ten minutes: clocks that differ by less are not spoken of. */
const APART = 600000;
const moment = (at) => `${new Date(at).toISOString().slice(0, 19).replace('T', ' ')} UTC`;

export function checkWitness(it) {
  const { stored = [], sightings = [] } = it.head.witness ?? {};
  for (const device of new Set(stored.map((row) => row.device)))
    storedOf(
      device,
      stored.filter((row) => row.device === device).sort((a, b) => a.last - b.last),
      it,
    );
  for (const sighting of sightings) seen(sighting, it);
}

function storedOf(device, rows, { links, wrong, told, witnessed }) {
  const times = [];
  rows.forEach(({ first, last, place, at }, i) => {
    const those = links.filter((link) => link.device === device && link.sequence >= first && link.sequence <= last);
    const before = rows[i - 1];
    if (those.length === 0 || before?.last >= first)
      wrong.push(`What the server is to have stored of device ${device} as message ${place} is not in this file.`);
    if (before !== undefined && !(place > before.place && at >= before.at))
      told.push(
        `The server's order of device ${device} is not that of its numbers: it was restored from an older copy, or this list was changed.`,
      );
    if (those.some((link) => link.kind !== 'bare' && link.at > at + APART))
      told.push(`Of device ${device}, message ${place} was stored before its clock says that it was written.`);
    times.push(`number ${first === last ? first : `${first} to ${last}`} at ${moment(at)} as message ${place}`);
  });
  witnessed.push(
    `The team's server said to the browser that made this pack that it had stored, of device ${device}, ${times.join('; ')}. Nobody signed that: it is the word of that server and that browser.`,
  );
}

function seen({ by, publicKey, at, heads, signature }, { links, wrong, witnessed }) {
  if (!fits(`Headroom seen ${canonical({ by, at, heads })}`, { publicKey, signature })) {
    wrong.push(`What device ${by} is to have seen does not fit its signature.`);
    return;
  }
  const same = [];
  for (const { device, sequence, hash } of heads) {
    const chain = links.filter((link) => link.device === device && link.sequence <= sequence);
    const there = chain.at(-1);
    if (there?.sequence !== sequence) continue;
    if (there.hash !== hash) {
      wrong.push(
        `Entry number ${sequence} of device ${device} is not the one that device ${by} had seen: the chain was rewritten.`,
      );
      continue;
    }
    const { sequence: first } = chain.filter(({ kind }) => kind === 'bare').at(-1) ?? chain[0];
    same.push(`number ${first === sequence ? first : `${first} to ${sequence}`} of device ${device}`);
  }
  if (same.length > 0)
    witnessed.push(
      `Device ${by} signed that it had, by its clock at ${moment(at)}, ${same.join(' and ')} as they are here. The key is one that only this file names: compare it with the team's.`,
    );
}
