/** The visible parts of pointing: a shield over the page, a frame round what is pointed at, and a bar that says what to do. */
export interface OverlayParts {
  readonly host: HTMLElement;
  readonly frame: HTMLElement;
  readonly bar: HTMLElement;
  readonly message: HTMLElement;
  readonly use: HTMLButtonElement;
  readonly stop: HTMLButtonElement;
  /** Whether a part has the focus; the page sees only that the host has it. */
  readonly hasFocus: (part: HTMLElement) => boolean;
}

type Styles = Readonly<Record<string, string>>;

/**
 * Builds the overlay in a closed shadow root. Styles are set one by one on the elements and marked important, so that
 * neither the page's styles nor its content security policy touch them; texts are only ever set as text.
 */
export function overlayParts(document: Document): OverlayParts {
  const dark = document.defaultView?.matchMedia?.('(prefers-color-scheme: dark)').matches ?? false;
  const colors = dark
    ? { paper: '#1c1f25', ink: '#e9e6df', line: '#343841', accent: '#7cc4cc', onAccent: '#14161a' }
    : { paper: '#faf7f0', ink: '#1d2129', line: '#d9d3c5', accent: '#0b5d66', onAccent: '#ffffff' };
  const fill = { position: 'fixed', inset: '0', width: '100vw', height: '100vh' };
  const host = make(document, 'div', { ...fill, 'z-index': '2147483647', cursor: 'crosshair' });
  const root = host.attachShadow({ mode: 'closed' });
  const frame = make(document, 'div', {
    position: 'fixed',
    display: 'none',
    border: `3px solid ${colors.accent}`,
    outline: `1px solid ${colors.paper}`,
    'pointer-events': 'none',
  });
  const bar = make(document, 'div', {
    position: 'fixed',
    left: '16px',
    right: '16px',
    bottom: '16px',
    display: 'flex',
    'flex-wrap': 'wrap',
    'align-items': 'center',
    gap: '12px',
    padding: '12px 16px',
    background: colors.paper,
    color: colors.ink,
    border: `1px solid ${colors.line}`,
    'border-radius': '4px',
    font: '16px/1.4 system-ui, sans-serif',
    cursor: 'default',
  });
  bar.tabIndex = -1;
  bar.setAttribute('role', 'dialog');
  bar.setAttribute('aria-label', 'Headroom: point at a value');
  const message = make(document, 'div', {
    flex: '1 1 16em',
    font: 'inherit',
    color: 'inherit',
    'overflow-wrap': 'anywhere',
  });
  message.setAttribute('aria-live', 'polite');
  const button = {
    font: 'inherit',
    padding: '8px 16px',
    border: `1px solid ${colors.accent}`,
    'border-radius': '4px',
    'min-height': '44px',
    cursor: 'pointer',
  };
  const use = make(document, 'button', {
    ...button,
    display: 'none',
    background: colors.accent,
    color: colors.onAccent,
  });
  use.textContent = 'Use this';
  const stop = make(document, 'button', { ...button, background: colors.paper, color: colors.ink });
  stop.textContent = 'Stop';
  bar.append(message, use, stop);
  root.append(frame, bar);
  return { host, frame, bar, message, use, stop, hasFocus: (part) => root.activeElement === part };
}

/** Shows the overlay above everything, dialogs of the page included where the browser has a top layer for it. */
export function raise(document: Document, host: HTMLElement): void {
  document.documentElement.append(host);
  if (typeof host.showPopover !== 'function') return;
  host.setAttribute('popover', 'manual');
  host.showPopover();
}

export function setStyle(element: HTMLElement, name: string, value: string): void {
  element.style.setProperty(name, value, 'important');
}

function make<Tag extends 'div' | 'button'>(document: Document, tag: Tag, styles: Styles): HTMLElementTagNameMap[Tag] {
  const element = document.createElement(tag);
  const all = { all: 'initial', 'box-sizing': 'border-box', display: 'block', ...styles };
  for (const [name, value] of Object.entries(all)) setStyle(element, name, value);
  return element;
}
