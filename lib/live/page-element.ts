/**
 * The little of a browser's page that the live figures need, so that the same code can be tried on a page without one.
 *
 * @module
 */

/** An element of a page. */
export interface PageElement {
  textContent: string | null;
  innerHTML: string;
  hidden: boolean;
  /** Of inputs. */
  value: string;
  readonly ownerDocument: PageDocument;
  readonly parentElement: PageElement | null;
  querySelector(selector: string): PageElement | null;
  querySelectorAll(selector: string): Iterable<PageElement>;
  setAttribute(name: string, value: string): void;
  getAttribute(name: string): string | null;
  append(...children: (PageElement | string)[]): void;
  before(...siblings: (PageElement | string)[]): void;
  addEventListener(kind: string, listener: () => void): void;
  dispatchEvent(event: unknown): boolean;
}

/** A page. */
export interface PageDocument {
  createElement(name: string): PageElement;
  querySelectorAll(selector: string): Iterable<PageElement>;
}

/**
 * An element with its attributes and content.
 *
 * @param document of the page
 * @param name of the element
 * @param attributes by name; texts stay texts
 * @param children elements and texts
 * @returns the element, not yet in the page
 */
export function element(
  document: PageDocument,
  name: string,
  attributes: Readonly<Record<string, string>>,
  ...children: readonly (PageElement | string)[]
): PageElement {
  const made = document.createElement(name);
  for (const [key, value] of Object.entries(attributes)) made.setAttribute(key, value);
  made.append(...children);
  return made;
}
