/**
 * Loads the page's program and its style sheet. The build names them, and all parts of the program, in the page, so that
 * they are asked for at once rather than one after the other.
 */
export async function loadLater(): Promise<void> {
  const names = document.querySelector<HTMLMetaElement>('meta[name="later"]')?.content.split(' ') ?? [];
  const [program = '', style = '', ...parts] = names;
  for (const href of parts) add('link', { rel: 'modulepreload', href });
  add('link', { rel: 'modulepreload', href: program });
  // Without it a screen would stand there naked for a moment.
  await loaded(add('link', { rel: 'stylesheet', href: style }));
  add('script', { type: 'module', src: program });
}

function add(tag: string, attributes: Readonly<Record<string, string>>): HTMLElement {
  const element = document.createElement(tag);
  for (const [name, value] of Object.entries(attributes)) element.setAttribute(name, value);
  document.head.append(element);
  return element;
}

/** Whichever way it ends: naked is better than nothing. */
function loaded(element: HTMLElement): Promise<void> {
  return new Promise((resolve) => {
    element.onload = () => resolve();
    element.onerror = () => resolve();
  });
}
