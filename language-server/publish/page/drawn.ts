/** Drawings on a page: the picture, and what it says in words behind a fold, for everybody. */
import type { Drawing, TextAlternative } from '../drawings/svg.ts';
import { Html, html } from './html.ts';

/** px. What is wider scrolls by itself and never the page; what is not is made smaller where there is less room. */
const WIDE = 480;

/** `saidBy`: `In words`, the heading of the fold. Only one wide drawing of a title may stand on a page. */
export function drawn({ svg, width, title, alternative, caption }: Drawing, saidBy: string): Html {
  const picture = new Html(svg);
  // The keyboard reaches what scrolls.
  const shown =
    width > WIDE
      ? html`<section class="scroll" aria-label="${title}" tabindex="0">${picture}</section>`
      : picture;
  const fold = html`<details><summary>${saidBy}</summary>${words(alternative)}</details>`;
  // Nothing may follow a caption in its figure.
  const under = caption
    ? html`<figcaption>${caption.map((line) => html`<p>${line}</p>`)}${fold}</figcaption>`
    : fold;
  return html`<figure class="drawn">${shown}${under}</figure>`;
}

function words(alternative: TextAlternative): Html {
  if (alternative.kind === 'list')
    return html`<p>${alternative.caption}</p><ul>${alternative.sentences.map((one) => html`<li>${one}</li>`)}</ul>`;
  const { caption, head, rows, things } = alternative;
  return html`<table class="list"><caption>${caption}</caption><thead><tr>${head.map((cell) => html`<th scope="col">${cell}</th>`)}</tr></thead><tbody>${rows.map(
    (row, at) =>
      html`<tr${things?.[at] !== undefined && html` data-thing="${things[at]}"`}>${row.map((cell) => html`<td>${cell}</td>`)}</tr>`,
  )}</tbody></table>`;
}
