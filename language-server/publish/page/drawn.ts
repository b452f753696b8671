/** Drawings on a page: the picture, and what it says in words behind a fold, for everybody. */
import type { Drawing, TextAlternative } from '../drawings/svg.ts';
import { Html, html } from './html.ts';

/** `saidBy`: `In words`, the heading of the fold. */
export function drawn({ svg, alternative }: Drawing, saidBy: string): Html {
  // A wide drawing scrolls by itself and never the page; the keyboard reaches it.
  return html`<figure class="drawn"><section class="scroll" aria-label="${alternative.caption}" tabindex="0">${new Html(svg)}</section><details><summary>${saidBy}</summary>${words(alternative)}</details></figure>`;
}

function words(alternative: TextAlternative): Html {
  if (alternative.kind === 'list')
    return html`<p>${alternative.caption}</p><ul>${alternative.sentences.map((one) => html`<li>${one}</li>`)}</ul>`;
  const { caption, head, rows } = alternative;
  return html`<table class="list"><caption>${caption}</caption><thead><tr>${head.map((cell) => html`<th scope="col">${cell}</th>`)}</tr></thead><tbody>${rows.map(
    (row) => html`<tr>${row.map((cell) => html`<td>${cell}</td>`)}</tr>`,
  )}</tbody></table>`;
}
