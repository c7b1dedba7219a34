import type { ComponentChild, ComponentChildren, VNode } from 'preact';

/**
 * Draws what a screen's parts say, once and for all: without state, without handlers, and so without the program that
 * sees to both. HTML elements only. It is for the moments in which that program would take longer than all it draws.
 */
export function drawOnce(what: ComponentChildren): Node[] {
  if (Array.isArray(what)) return what.flatMap(drawOnce);
  if (what === null || what === undefined || typeof what === 'boolean') return [];
  return isMarkup(what) ? draw(what) : [document.createTextNode(String(what))];
}

function isMarkup(what: ComponentChild): what is VNode {
  return typeof what === 'object' && what !== null;
}

function draw({ type, props }: VNode): Node[] {
  if (typeof type === 'function') return drawOnce((type as (given: object) => ComponentChildren)(props));
  const element = document.createElement(type);
  for (const [name, value] of Object.entries(props)) {
    if (name === 'style') Object.assign(element.style, value);
    else if (name === 'children') element.append(...drawOnce(value as ComponentChildren));
    else if (value !== undefined && value !== false) element.setAttribute(name, String(value));
  }
  return [element];
}
