/** The frame of the site's own pages: way back to the index, heading, content. */
import { type Html, html, type Piece } from '../page/html.ts';
import { shell } from '../page/shell.ts';
import { STYLE } from '../page/style/style.ts';
import { cautionsOf } from '../words/cautions.ts';
import { wordsOf } from '../words/words.ts';
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
  /** It shows work that can hurt somebody, or what is dangerous about a machine. */
  cautions?: boolean;
}

export function sitePage(page: SitePage, place: SitePlace): string {
  const { title, lead, body, script, top, checks, cautions } = page;
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
${
  cautions &&
  html`<section aria-labelledby="cautions"><h2 id="cautions">${words.cautions}</h2>${cautionsOf(
    wordsOf(language === 'en-US' ? 'american' : 'british'),
  ).map((caution) => html`<p class="caution-text">${caution}</p>`)}</section>`
}
</main>
</div>`,
  });
}
