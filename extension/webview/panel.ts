/**
 * The page inside a panel. It is given markup that Dowel made, takes what is needed of it, and lets every element that
 * has a place in the text be chosen with the pointer or with the keyboard.
 */
import type { ElementKey, FromPanel, ToPanel } from './messages.ts';
import { PANEL_STYLE, styleAsThemed } from './style.ts';
import { Zoom } from './zoom.ts';

declare function acquireVsCodeApi(): { postMessage(message: FromPanel): void };

const editor = acquireVsCodeApi();
const nonce = document.currentScript?.nonce ?? '';
const shown = document.getElementById('shown')!;
const empty = document.getElementById('empty')!;
const bar = document.getElementById('zoom');
/** A page has none: it is read as it is. */
const zoom = bar ? new Zoom(bar, shown) : undefined;
/** What is shown, as it came. */
let markup = '';
let keys: readonly ElementKey[] = [];
/** The element of each key. */
let elements: (Element | undefined)[] = [];
/** The one element that the Tab key reaches; arrow keys go on from it. */
let current = -1;
let pageStyles: string[] = [];

style('panel', PANEL_STYLE);
new MutationObserver(dress).observe(document.body, { attributes: true, attributeFilter: ['class'] });

window.addEventListener('message', ({ data }: MessageEvent<ToPanel>) => {
  if (data.type === 'show') show(data.html, data.empty, data.elements);
  else if (data.type === 'mark') mark(data.elements, data.reveal);
});

shown.addEventListener('click', (event) => {
  const target = event.target as Element;
  // What can be ticked, folded or followed keeps its own meaning.
  if (target.closest('a[href], input, label, summary, button')) return;
  const element = indexOf(target);
  if (element >= 0) go(element, false);
});
shown.addEventListener('keydown', (event) => {
  const element = elements.indexOf(event.target as Element);
  if (element < 0) return;
  if (event.key === 'Enter') go(element, true);
  else if (event.key === 'ArrowDown' || event.key === 'ArrowRight') step(element, 1);
  else if (event.key === 'ArrowUp' || event.key === 'ArrowLeft') step(element, -1);
  else if (event.key === 'Home') step(-1, 1);
  else if (event.key === 'End') step(elements.length, -1);
  else return;
  event.preventDefault();
});
editor.postMessage({ type: 'ready' });

function show(html: string, words: string, given: readonly ElementKey[]): void {
  const focused = keys[elements.indexOf(document.activeElement ?? undefined)];
  // What is the same stays as it is: what is ticked, unfolded, scrolled to or has the focus.
  if (html !== markup) replace(html);
  markup = html;
  empty.textContent = words;
  empty.hidden = html !== '';
  keys = given;
  elements = keys.map(find);
  current = -1;
  for (const element of elements) {
    element?.setAttribute('tabindex', '-1');
    element?.classList.add('dowel-place');
    if (element instanceof SVGElement) element.setAttribute('role', 'link');
  }
  // A drawing with links in it is no single picture any more.
  for (const svg of shown.querySelectorAll('svg.dowel-drawing:has(.dowel-place)'))
    svg.setAttribute('role', 'group');
  const again = keys.findIndex(({ by, key }) => focused?.by === by && focused.key === key);
  reach(again >= 0 ? again : elements.findIndex((element) => element !== undefined));
  if (again >= 0) focus(elements[again]);
}

function replace(html: string): void {
  const page = new DOMParser().parseFromString(html, 'text/html');
  pageStyles = [...page.querySelectorAll('style')].map(({ textContent }) => textContent ?? '');
  for (const one of page.querySelectorAll('style, script, #work, .skip')) one.remove();
  dress();
  const scrolled = [window.scrollX, window.scrollY] as const;
  const chosen = [...shown.querySelectorAll('input:checked')].map(({ id }) => id);
  const open = [...shown.querySelectorAll('details')].map((one) => one.open);
  shown.replaceChildren(...document.adoptNode(page.body).childNodes);
  // What the reader chose, ticked or unfolded stays so while the text changes.
  for (const id of chosen) {
    const input = document.getElementById(id);
    if (input instanceof HTMLInputElement) input.checked = true;
  }
  for (const [at, one] of [...shown.querySelectorAll('details')].entries()) one.open = open[at] ?? false;
  zoom?.apply();
  window.scrollTo(...scrolled);
}

function find({ by, key }: ElementKey): Element | undefined {
  if (by === 'id') return document.getElementById(key) ?? undefined;
  const attribute = by === 'thing' ? 'data-thing' : 'data-step';
  return shown.querySelector(`svg [${attribute}="${CSS.escape(key)}"]`) ?? undefined;
}

function mark(marked: readonly number[], reveal: boolean): void {
  for (const element of elements) {
    element?.classList.remove('dowel-here');
    element?.removeAttribute('aria-current');
  }
  const here = marked.flatMap((index) => elements[index] ?? []);
  for (const element of here) {
    element.classList.add('dowel-here');
    element.setAttribute('aria-current', 'location');
  }
  const [first] = here;
  if (!first) return;
  reach(elements.indexOf(first));
  if (!reveal) return;
  const { top, bottom, left, right } = first.getBoundingClientRect();
  const seen = top >= 0 && bottom <= window.innerHeight && left >= 0 && right <= window.innerWidth;
  if (!seen) first.scrollIntoView({ block: 'center', inline: 'center' });
}

/** The innermost element with a place around what was chosen. */
function indexOf(target: Element): number {
  for (let at: Element | null = target; at && at !== shown; at = at.parentElement) {
    const index = elements.indexOf(at);
    if (index >= 0) return index;
  }
  return -1;
}

function go(element: number, focus: boolean): void {
  reach(element);
  editor.postMessage({ type: 'go', element, focus });
}

function step(from: number, by: number): void {
  for (let at = from + by; at >= 0 && at < elements.length; at += by) {
    const element = elements[at];
    if (!element || element === elements[from]) continue;
    reach(at);
    focus(element);
    return;
  }
}

function focus(element: Element | undefined): void {
  if (element instanceof HTMLElement || element instanceof SVGElement) element.focus();
}

function reach(element: number): void {
  elements[current]?.setAttribute('tabindex', '-1');
  current = element;
  elements[current]?.setAttribute('tabindex', '0');
}

/** Styles of the page in the colours of the editor's theme. */
function dress(): void {
  const { classList } = document.body;
  const contrast =
    classList.contains('vscode-high-contrast') || classList.contains('vscode-high-contrast-light');
  const dark =
    classList.contains('vscode-dark') || (contrast && !classList.contains('vscode-high-contrast-light'));
  style('page', pageStyles.map((text) => styleAsThemed(text, { dark, contrast })).join('\n'));
  document.documentElement.classList.toggle('dowel-dark', dark);
}

function style(name: string, text: string): void {
  const id = `dowel-style-${name}`;
  const known = document.getElementById(id);
  if (known?.textContent === text) return;
  const element = document.createElement('style');
  element.id = id;
  element.nonce = nonce;
  element.textContent = text;
  if (known) known.replaceWith(element);
  else if (name === 'page') document.head.prepend(element);
  else document.head.append(element);
}
