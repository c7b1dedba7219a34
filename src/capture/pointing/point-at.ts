import type { Outcome } from '../../domain/outcome.ts';
import { cleanLine, shorten } from '../dom/clean-text.ts';
import { boxOf, elementUnder, narrow, widen } from './element-under.ts';
import { overlayParts, raise, setStyle } from './overlay-parts.ts';
import { step } from './step.ts';

/** What pointing is for, and what an element would give. */
export interface Pointing<Result> {
  /** As it stands in "Point at …": "the odometer". */
  readonly what: string;
  /** What the element gives, with a sentence about it to be confirmed; or why it gives nothing. */
  readonly examine: (element: Element) => Outcome<{ readonly result: Result; readonly sentence: string }>;
}

/**
 * Lets the user click a value on the page and confirm what was read from it. Resolves to null when he stops. The page
 * gets none of the clicks and keys meanwhile; events that a script made up do nothing. Arrow keys move and widen, Enter
 * takes, Escape stops, Tab goes from the bar to its buttons.
 */
export function pointAt<Result>(document: Document, pointing: Pointing<Result>): Promise<Result | null> {
  return new Promise((resolve) => {
    const overlay = new Overlay(document, pointing, resolve);
    overlay.begin();
  });
}

const SWALLOWED = [
  'pointerdown',
  'pointerup',
  'mousedown',
  'mouseup',
  'auxclick',
  'contextmenu',
  'dblclick',
  'keyup',
  'keypress',
  'touchstart',
  'touchend',
];

/** How far the frame stands off what it is round, its own line included; in CSS pixels. */
const AROUND = 5;

class Overlay<Result> {
  private readonly document: Document;
  private readonly pointing: Pointing<Result>;
  private readonly resolve: (result: Result | null) => void;
  private readonly parts;
  private readonly gone = new AbortController();
  private readonly before: Element | null;
  private under: Element | null = null;
  private ready: { readonly result: Result } | null = null;

  constructor(document: Document, pointing: Pointing<Result>, resolve: (result: Result | null) => void) {
    this.document = document;
    this.pointing = pointing;
    this.resolve = resolve;
    this.parts = overlayParts(document);
    this.before = document.activeElement;
  }

  begin(): void {
    this.say(`Point at ${this.pointing.what} on the page and click it. Arrow keys move, Enter takes, Escape stops.`);
    raise(this.document, this.parts.host);
    const view = this.document.defaultView;
    if (view === null) {
      this.finish(null);
      return;
    }
    const options = { capture: true, signal: this.gone.signal };
    view.addEventListener('mousemove', (event) => this.onMove(event), options);
    view.addEventListener('click', (event) => this.onClick(event), options);
    view.addEventListener('keydown', (event) => this.onKey(event), options);
    view.addEventListener('scroll', () => this.draw(), options);
    for (const name of SWALLOWED) view.addEventListener(name, (event) => this.swallow(event), options);
    this.parts.bar.focus();
  }

  /** Keeps an event from the page. Whether it is one that the user made. */
  private swallow(event: Event): boolean {
    if (!this.parts.host.isConnected) {
      // The page took the overlay away: then there is nothing left to point with.
      this.finish(null);
      return false;
    }
    event.stopImmediatePropagation();
    event.preventDefault();
    return event.isTrusted;
  }

  private onMove(event: MouseEvent): void {
    if (!event.isTrusted || this.ready !== null || isIn(event, this.parts.bar)) return;
    this.under = elementUnder(this.document, event.clientX, event.clientY, this.parts.host);
    this.draw();
  }

  private onClick(event: MouseEvent): void {
    if (!this.swallow(event)) return;
    if (isIn(event, this.parts.stop)) this.finish(null);
    else if (isIn(event, this.parts.use)) this.confirm();
    else if (!isIn(event, this.parts.bar)) {
      this.under = elementUnder(this.document, event.clientX, event.clientY, this.parts.host);
      this.draw();
      this.examine();
    }
  }

  private onKey(event: KeyboardEvent): void {
    if (!this.swallow(event)) return;
    if (event.key === 'Escape') this.finish(null);
    else if (event.key === 'Tab') this.nextButton(event.shiftKey);
    else if (event.key === 'Enter' || event.key === ' ') {
      if (this.parts.hasFocus(this.parts.stop)) this.finish(null);
      else this.confirm();
    } else if (event.key.startsWith('Arrow')) this.move(event.key);
  }

  /** The page must not get the focus, so it goes round here: the bar, its buttons, the bar. */
  private nextButton(back: boolean): void {
    const { bar, use, stop } = this.parts;
    const round = this.ready === null ? [bar, stop] : [bar, use, stop];
    const at = round.findIndex((one) => this.parts.hasFocus(one));
    round[(Math.max(at, 0) + (back ? round.length - 1 : 1)) % round.length]?.focus();
  }

  /** The first time it says what would be taken, the second time it takes it. */
  private confirm(): void {
    if (this.ready === null) this.examine();
    else this.finish(this.ready.result);
  }

  private move(key: string): void {
    const { under } = this;
    if (key === 'ArrowRight') this.under = step(this.document, under, true);
    else if (key === 'ArrowLeft') this.under = step(this.document, under, false);
    else if (under !== null) this.under = key === 'ArrowUp' ? widen(under) : narrow(under);
    this.ready = null;
    setStyle(this.parts.use, 'display', 'none');
    this.parts.bar.focus();
    this.under?.scrollIntoView({ block: 'nearest' });
    this.draw();
    const text = shorten(cleanLine(this.under?.textContent ?? ''), 80);
    if (text !== '') this.say(`“${text}”. Enter takes it, arrow keys go on, Escape stops.`);
  }

  private examine(): void {
    if (this.under === null) return;
    const answer = this.pointing.examine(this.under);
    this.ready = answer.ok ? { result: answer.value.result } : null;
    setStyle(this.parts.use, 'display', answer.ok ? 'block' : 'none');
    this.say(answer.ok ? `${answer.value.sentence} Use this, or point at something else.` : answer.message);
  }

  private draw(): void {
    const { frame } = this.parts;
    const box = this.under === null ? null : boxOf(this.under);
    setStyle(frame, 'display', box === null ? 'none' : 'block');
    if (box === null) return;
    // Around the text and not over its first and last figure.
    for (const side of ['left', 'top'] as const) setStyle(frame, side, `${Math.round(box[side]) - AROUND}px`);
    for (const side of ['width', 'height'] as const) setStyle(frame, side, `${Math.round(box[side]) + 2 * AROUND}px`);
  }

  private say(sentence: string): void {
    this.parts.message.textContent = sentence.slice(0, 400);
  }

  private finish(result: Result | null): void {
    if (this.gone.signal.aborted) return;
    this.gone.abort();
    this.parts.host.remove();
    if (this.before instanceof HTMLElement) this.before.focus();
    this.resolve(result);
  }
}

/** By its place and not by its target: what is inside a closed shadow root has no target that could be seen here. */
function isIn(event: MouseEvent, element: HTMLElement): boolean {
  const box = element.getBoundingClientRect();
  const { clientX: x, clientY: y } = event;
  return box.width > 0 && x >= box.left && x <= box.right && y >= box.top && y <= box.bottom;
}
