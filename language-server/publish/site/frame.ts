/** The frame of the site's own pages: way back to the index, heading, content. */
import { type Html, html, type Piece } from '../page/html.ts';
import { shell } from '../page/shell.ts';
import { STYLE } from '../page/style/style.ts';
import { CHECKS, INDEX } from './addresses.ts';
import type { SitePlace } from './site.ts';

export interface SitePage {
  title: string;
  lead?: Piece;
  body: Html;
  script?: string;
  /** The index is not led back to. */
  top?: boolean;
  checks?: boolean;
}

export function sitePage({ title, lead, body, script, top, checks }: SitePage, place: SitePlace): string {
  const { words, language } = place;
  return shell({
    language,
    title: top ? title : `${title} · ${words.index}`,
    description: title,
    styles: [STYLE],
    ...(script === undefined ? {} : { script }),
    body: html`<a class="skip" href="#content">${words.skipToContent}</a>
<div class="sheet">
<header class="masthead">${
      !top &&
      html`<nav class="home" aria-label="${words.site}"><a href="${place.to(INDEX)}">${words.site}</a>${
        checks && html` · <a href="${place.to(CHECKS)}">${words.checks}</a>`
      }</nav>`
    }<h1>${title}</h1>${lead && html`<p class="purpose">${lead}</p>`}</header>
<main id="content" tabindex="-1">
${body}
</main>
</div>`,
  });
}
