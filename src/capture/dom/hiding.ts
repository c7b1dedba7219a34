import type { SafeDom } from './safe-dom.ts';

/** What the styles of one element say about seeing it. `background` is what lies behind its text, when that is known. */
export interface Sight {
  readonly gone: boolean;
  readonly veiled: boolean;
  readonly inline: boolean | null;
  /** Line breaks of the source are kept. */
  readonly preserves: boolean;
  readonly background: string;
}

export const UNSTYLED: Sight = { gone: false, veiled: false, inline: null, preserves: false, background: '' };

/** Tags whose content is never on the page, whatever the styles say. */
export const NEVER_SHOWN: ReadonlySet<string> = new Set([
  'style',
  'noscript',
  'template',
  'svg',
  'math',
  'canvas',
  'video',
  'audio',
  'object',
  'embed',
  'datalist',
  'textarea',
  'map',
]);

/**
 * Judges from the computed style, and from the layout where there is one. A style that can't be asked for (a document
 * without a window) leaves the attributes to decide.
 */
export function sightOf(element: Element, dom: SafeDom, view: Window | null, behind: string): Sight {
  if (isTabPanel(element, dom)) return { ...UNSTYLED, inline: false, background: behind };
  if (hiddenByMarkup(element, dom)) return { ...UNSTYLED, gone: true, background: behind };
  if (view === null) return { ...UNSTYLED, background: behind };
  const style = view.getComputedStyle(element);
  const background = opaque(style.backgroundColor) ? style.backgroundColor : behind;
  return {
    gone: hiddenByStyle(style, background),
    veiled: veiledByStyle(style),
    inline: inlineByStyle(style.display),
    preserves: /^(?:pre|break-spaces)/.test(style.whiteSpace ?? ''),
    background,
  };
}

const STRUCK_OUT: ReadonlySet<string> = new Set(['del', 's', 'strike']);

/** A panel of tabs that is not in front is one press away, and belongs to the page like any other. */
export const isTabPanel = (element: Element, dom: SafeDom): boolean => dom.attribute(element, 'role') === 'tabpanel';

function hiddenByMarkup(element: Element, dom: SafeDom): boolean {
  if (dom.attribute(element, 'hidden') !== null) return true;
  const tag = dom.tag(element);
  if (STRUCK_OUT.has(tag)) return true;
  return tag === 'dialog' && dom.attribute(element, 'open') === null;
}

function hiddenByStyle(style: CSSStyleDeclaration, background: string): boolean {
  if (style.display === 'none') return true;
  if (style.visibility === 'hidden' || style.visibility === 'collapse') return true;
  if (style.opacity !== '' && Number(style.opacity) < 0.1) return true;
  if (pixels(style.fontSize) < 2 || style.fontSize === '0') return true;
  if (transparent(style.color)) return true;
  if (/^(?:matrix\(0, |scale\(0)/.test(style.transform ?? '')) return true;
  // A struck-out price is the price that no longer holds.
  if ((style.textDecorationLine ?? '').includes('line-through') || style.textDecoration?.includes('line-through')) {
    return true;
  }
  return background !== '' && style.color === background;
}

/** The usual ways to keep text for screen readers only: clipped to a pixel, or moved far off the screen. */
function veiledByStyle(style: CSSStyleDeclaration): boolean {
  if (farOff(style.textIndent) || farOff(style.marginLeft) || movedFarOff(style.transform ?? '')) return true;
  const clipped = style.overflow === 'hidden' || style.overflow === 'clip';
  if (clipped && (tiny(style.width) || tiny(style.height) || tiny(style.maxHeight))) return true;
  if (/^inset\((?:50|[6-9]\d|100)%/.test(style.clipPath ?? '')) return true;
  const free = style.position === 'absolute' || style.position === 'fixed';
  if (!free) return false;
  if (/^rect\((?:0|1)px,? (?:0|1)px,? (?:0|1)px,? (?:0|1)px\)$/.test(style.clip ?? '')) return true;
  return farOff(style.left) || farOff(style.top) || farOff(style.right) || farOff(style.bottom);
}

function inlineByStyle(display: string): boolean | null {
  if (display === '') return null;
  return display === 'contents' || display.startsWith('inline');
}

const pixels = (length: string): number => (/^-?[\d.]+px$/.test(length) ? Number.parseFloat(length) : Number.NaN);
const tiny = (length: string): boolean => pixels(length) <= 1;
const farOff = (length: string): boolean => pixels(length) <= -500 || pixels(length) >= 20_000;
const movedFarOff = (transform: string): boolean =>
  (/^(?:translate[XY]?|matrix)\([^()]{0,80}\)/.exec(transform)?.[0].match(/-?\d+(?:\.\d+)?/g) ?? []).some(
    (length) => Number(length) <= -500,
  );
const transparent = (color: string): boolean => color === 'transparent' || /^rgba\(.*, ?0(?:\.0\d*)?\)$/.test(color);
const opaque = (color: string): boolean => color !== '' && !color.startsWith('rgba') && color !== 'transparent';
