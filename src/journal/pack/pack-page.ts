import { sha256 } from '@noble/hashes/sha2.js';
import { bytesToHex, utf8ToBytes } from '@noble/hashes/utils.js';
import { hashOfText } from '../entry-hash.ts';
import { hashSchema } from '../ids.ts';
import { DATA_START, PACK_TAIL, toHtml } from './open-pack.ts';
import type { PackHead, PackLine } from './pack-format.ts';
import { PACK_STYLE } from './pack-style.ts';

/** One line of the readable time line. */
interface Moment {
  readonly when: string;
  readonly who: string;
  readonly what: string;
  /** Says so where it was undone later, or its content is held back. */
  readonly remark?: string;
  /** The hash of the entry, so that the reader finds it among the data. */
  readonly hash: string;
  /** The hashes of files to be shown with it. */
  readonly files: readonly string[];
}

export interface PackFile {
  readonly hash: string;
  readonly name: string;
  readonly mediaType: string;
  readonly sizeBytes: number;
  readonly base64: string;
}

export interface PackContent {
  readonly title: string;
  /** Made by whom and when, in words. */
  readonly madeBy: string;
  /** The lot as it stands now: name and value. */
  readonly facts: readonly (readonly [string, string])[];
  readonly moments: readonly Moment[];
  readonly files: readonly PackFile[];
  readonly head: PackHead;
  readonly lines: readonly PackLine[];
  /** The text of the standalone script, to be copied out of the page. */
  readonly script: string;
}

/** What browsers draw as a picture without running anything. An SVG is not among them: it is a program as well. */
const PICTURE = /^image\/(?:png|jpeg|webp|gif|avif)$/;

/**
 * A pack as the parts of one page, which reads without this tool, without a network and without scripts. Everything that
 * came from pages, people and files is text in it, never markup.
 */
export function packPage(content: PackContent): string[] {
  const page = sealedParts();
  const files = new Map(content.files.map((file) => [file.hash, file]));
  page.add(
    '<!DOCTYPE html>\n<html lang="en">\n<head>\n<meta charset="utf-8">\n',
    `<meta http-equiv="Content-Security-Policy" content="default-src 'none'; img-src data:; style-src 'unsafe-inline'">\n`,
    '<meta name="viewport" content="width=device-width, initial-scale=1">\n',
    `<title>${toHtml(content.title)}</title>\n<style>${PACK_STYLE}</style>\n</head>\n<body>\n<main>\n`,
    `<h1>${bdi(content.title)}</h1>\n<p>${bdi(content.madeBy)}</p>\n`,
    `<table><caption>The lot, as known now</caption>\n${content.facts.map(factRow).join('')}</table>\n`,
    '<h2>What happened, in order</h2>\n<ol class="life">\n',
  );
  const shown = new Set<string>();
  for (const moment of content.moments) {
    page.add(momentHead(moment));
    for (const hash of moment.files) {
      const file = files.get(hash);
      if (file !== undefined && !shown.has(hash)) page.add(...fileParts(file));
      else if (file !== undefined) page.add(`<p>The file ${bdi(file.name)} is shown above.</p>\n`);
      shown.add(hash);
    }
    page.add('</li>\n');
  }
  page.add('</ol>\n', PROOF, `<details><summary>The script</summary><pre>${toHtml(content.script)}</pre></details>\n`);
  page.add('<h2>The data</h2>\n');
  const data = [
    { ...content.head },
    ...content.lines,
    ...content.files.map(({ hash, name, mediaType, sizeBytes }) => ({ file: { hash, name, mediaType, sizeBytes } })),
  ].map((line) => `${JSON.stringify(line)}\n`);
  const seal = { seal: { page: page.hash(), data: hashOfText(data.join('')) } };
  return [
    ...page.parts,
    DATA_START,
    ...data.map(toHtml),
    `${JSON.stringify(seal).replaceAll('"', '&quot;')}\n`,
    PACK_TAIL,
  ];
}

function sealedParts() {
  const hash = sha256.create();
  const parts: string[] = [];
  return {
    parts,
    add(...texts: readonly string[]) {
      for (const text of texts) {
        hash.update(utf8ToBytes(text));
        parts.push(text);
      }
    },
    hash: () => hashSchema.parse(bytesToHex(hash.digest())),
  };
}

/** Isolated, so that letters written from right to left turn nothing around them. */
const bdi = (text: string): string => `<bdi>${toHtml(text)}</bdi>`;

const factRow = ([name, value]: readonly [string, string]): string =>
  `<tr><th scope="row">${toHtml(name)}</th><td>${bdi(value)}</td></tr>\n`;

function momentHead({ when, who, what, remark, hash }: Moment): string {
  const note = remark === undefined ? '' : ` <strong>(${toHtml(remark)})</strong>`;
  return `<li><p><time>${toHtml(when)}</time> ${bdi(what)}${note}</p><p class="small">Written by ${bdi(who)}, entry <code>${toHtml(hash.slice(0, 12))}</code></p>\n`;
}

function fileParts({ hash, name, mediaType, base64, sizeBytes }: PackFile): string[] {
  const id = `id="file-${toHtml(hash)}"`;
  const caption = `<figcaption>${bdi(name)}, ${sizeBytes.toLocaleString('en-US')} bytes, SHA-256 <code>${toHtml(hash)}</code></figcaption>`;
  if (PICTURE.test(mediaType))
    return [
      `<figure><img ${id} src="data:${mediaType};base64,`,
      base64,
      `" alt="${toHtml(name)}">${caption}</figure>\n`,
    ];
  // Whatever it says it is, a click saves it and opens nothing.
  const link = `<a ${id} href="data:application/octet-stream;base64,`;
  return [`<figure>${link}`, base64, `" download="${toHtml(name)}">Save this file</a>${caption}</figure>\n`];
}

const PROOF = `<h2>What this proves, and what it does not</h2>
<p>Each entry carries a fingerprint (SHA-256) over its content and over the fingerprint of the entry before it on the same
device. So an entry that was changed, taken out, put in or moved later no longer fits those around it, and the check names
it. Where the content of an entry is held back, because it is about something else, its fingerprint can still be made again.</p>
<p>It does <em>not</em> prove that what was typed is true, that the clock of the computer was right, or who sat at it. And whoever
holds the whole journal could have written all of it anew from some entry on: that shows only against a fingerprint that
left his hands earlier, in a mail, on paper, or in an older backup. Ask for one, and give it to the check. Whoever changes
this page can also seal it anew; so trust what the check prints of the entries rather than the list above.</p>
<h2>How to check it</h2>
<p>Copy the script below into a file <code>verify-pack.mjs</code>, or get it from someone you trust. With Node.js (18 or newer,
nothing else) run <code>node verify-pack.mjs THIS-FILE.html</code>. With a fingerprint that was noted earlier:
<code>node verify-pack.mjs THIS-FILE.html --noted DEVICE:NUMBER:FINGERPRINT</code>. It prints every break it finds, and
what the entries themselves say. Open this page as a file: a mail program or an editor that saves it anew may break the seal.</p>
`;
