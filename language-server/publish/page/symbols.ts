/**
 * Warning signs, drawn here: a triangle in the manner of the general warning sign of ISO 3864-1 with a simple picture
 * in it. They stand beside words and never in their place, so readers of a screen hear the words only. A page holds
 * each drawing once and refers to it.
 *
 * Source of the form: ISO 3864-1 and ANSI Z535.3 (black on yellow, black edge), from memory. The pictures in it are
 * our own, not those of ISO 7010.
 */
import type { SymbolKind } from '../document/types.ts';
import { Html, html } from './html.ts';

/** Lines are drawn with the sign's own colour, 2 units wide, unless a shape is filled. */
const PICTURES: Readonly<Record<string, string>> = {
  general:
    '<path class="sign-fill" d="M22.2 17h3.6l-.8 13h-2z"/><circle class="sign-fill" cx="24" cy="35" r="2.2"/>',
  pressure:
    '<circle cx="24" cy="30" r="8"/><path d="m24 30 4.6-4.6M18.3 35.7l1.4-1.4M29.7 35.7l-1.4-1.4M24 22v2"/><circle class="sign-fill" cx="24" cy="30" r="1.6"/>',
  'hot-surface': '<path d="M15 38h18M18 34c-2-3 2-5 0-8M24 34c-2-4 2-8 0-13M30 34c-2-3 2-5 0-8"/>',
  cold: '<path d="M24 19v20M15.3 24l17.4 10M15.3 34l17.4-10M21.5 20.5 24 23l2.5-2.5M21.5 37.5 24 35l2.5 2.5M16 28l3.3-.9-.9-3.4M32 30l-3.3.9.9 3.4M16 30l3.3.9-.9 3.4M32 28l-3.3-.9.9-3.4"/>',
  electricity: '<path class="sign-fill" d="m26 15-8 13h5l-3 12 10-15h-5.5z"/>',
  'stored-energy': '<path d="M17 38h14M18 35.5l12-2.5-12-2.5 12-2.5-12-2.5M24 24v-6M21 21l3-3.4 3 3.4"/>',
  flammable:
    '<path class="sign-fill" d="M24 16c1 5 7 7.5 7 14.5a7 7 0 0 1-14 0c0-3.5 2-5 3-7.5 1 2 1.6 2.5 2.4 3.2C23 23 23 20 24 16z"/>',
  chemical:
    '<path d="M22 18v6l-6 12a1.5 1.5 0 0 0 1.4 2h13.2a1.5 1.5 0 0 0 1.4-2l-6-12v-6M20.5 18h7"/><path class="sign-fill" d="M19.5 31.5h9l2.6 5.5h-14.2z"/>',
  lifting:
    '<path d="M24 15v5M24 20a3 3 0 1 1-3 3M18 38l3-8h6l3 8z"/><path class="sign-fill" d="m18 38 3-8h6l3 8z"/>',
  crushing:
    '<circle cx="20" cy="33" r="5"/><circle cx="29.5" cy="27" r="5"/><path d="M15 25a9 9 0 0 1 6-3M19.5 20l2 2-1.6 2.4"/><circle class="sign-fill" cx="20" cy="33" r="1.2"/><circle class="sign-fill" cx="29.5" cy="27" r="1.2"/>',
  sharp: '<path class="sign-fill" d="m17 36 13-17 2 12z"/><path d="M15 39h18"/>',
  dust: '<circle class="sign-fill" cx="18" cy="35" r="2"/><circle class="sign-fill" cx="24" cy="37" r="1.5"/><circle class="sign-fill" cx="30" cy="35" r="2.2"/><circle class="sign-fill" cx="21" cy="30" r="1.6"/><circle class="sign-fill" cx="27" cy="30" r="2"/><circle class="sign-fill" cx="24" cy="25" r="1.5"/><circle class="sign-fill" cx="25" cy="20" r="1"/>',
  noise:
    '<path class="sign-fill" d="M15 28h4l5-5v16l-5-5h-4z"/><path d="M27 27a6 6 0 0 1 0 8M30 24a10 10 0 0 1 0 14"/>',
  radiation:
    '<circle class="sign-fill" cx="24" cy="30" r="4"/><path d="M24 20v3.5M24 36.5V39M15 30h3M30 30h3M17.5 23.5l2.3 2.3M30.5 23.5l-2.3 2.3M18 36.5l2-2M30 36.5l-2-2"/>',
  'falling-load':
    '<path d="M15 39h18M20 18v6M24 16v8M28 18v6"/><path class="sign-fill" d="m18.5 27.5 9-2 2 9-9 2z"/>',
};

/** What is no hazard to people has no triangle: a page with a corner turned in, and a letter in a ring. */
const PLAIN: Readonly<Record<string, string>> = {
  property: '<path class="sign-edge" d="M8 8h32v32H8z"/><path d="m16 32 10-10M24 17a6 6 0 1 1 7 7l-3-3z"/>',
  information:
    '<circle class="sign-edge" cx="24" cy="24" r="18"/><circle class="sign-fill" cx="24" cy="16" r="2"/><path d="M21 22h3v12M20 34h8"/>',
};

/** The sign itself. `signs` notes which ones the page has to hold. */
export function sign(kind: SymbolKind, signs: Set<SymbolKind>): Html {
  signs.add(kind);
  return html`<svg class="sign" width="40" height="40" aria-hidden="true" focusable="false"><use href="#sign-${kind}"></use></svg>`;
}

/** The drawings that a page refers to. */
export function signDrawings(signs: ReadonlySet<SymbolKind>): Html {
  if (signs.size === 0) return html``;
  return html`<svg class="signs" width="0" height="0" aria-hidden="true" focusable="false">${[...signs].sort().map(drawing)}</svg>`;
}

function drawing(kind: SymbolKind): Html {
  const plain = PLAIN[kind];
  const edge = plain === undefined ? '<path class="sign-edge" d="M24 5 44.5 42H3.5z"/>' : '';
  const picture = plain ?? PICTURES[kind] ?? PICTURES.general!;
  return html`<symbol id="sign-${kind}" viewBox="0 0 48 48">${new Html(edge + picture)}</symbol>`;
}
