/** A page for each check, from its explanation and examples, and the list of them all. */
import type { Check } from '../../checks/check.ts';
import { html } from '../page/html.ts';
import { checkAddress } from './addresses.ts';
import { sitePage } from './frame.ts';
import { inline, markdown } from './markdown.ts';
import type { SitePlace } from './site.ts';

export function checkPage(check: Check, place: SitePlace): string {
  const { words } = place;
  const body = html`<dl class="plate"><div><dt>${words.severity}</dt><dd>${check.severity}</dd></div><div><dt>${words.group}</dt><dd>${check.group}</dd></div></dl>
${markdown(check.explanation)}
<p><b>${words.source}:</b> ${inline(check.source)}</p>
${example(words.wrong, check.bad)}${example(words.right, check.good)}`;
  return sitePage({ title: check.name, lead: inline(check.title), body, checks: true }, place);
}

function example(title: string, text: string) {
  const shown = text.replace(/^\n+|\s+$/g, '');
  if (shown === '') return undefined;
  // It scrolls sideways where a line is long, so the keyboard has to reach it.
  return html`<section><h2>${title}</h2><section class="scroll" aria-label="${title}" tabindex="0"><pre><code>${shown}</code></pre></section></section>`;
}

export function checksPage(checks: readonly Check[], place: SitePlace): string {
  const { words } = place;
  const groups = [...new Set(checks.map((check) => check.group))];
  const body = html`${groups.map(
    (group, at) =>
      html`<section aria-labelledby="group-${at}"><h2 id="group-${at}">${group}</h2><table class="list"><thead><tr><th scope="col">${words.check}</th><th scope="col">${words.severity}</th><th scope="col">${words.description}</th></tr></thead><tbody>${checks
        .filter((check) => check.group === group)
        .map(
          (check) =>
            html`<tr><th scope="row"><a href="${place.to(checkAddress(check.name))}">${check.name}</a></th><td>${check.severity}</td><td>${inline(check.title)}</td></tr>`,
        )}</tbody></table></section>`,
  )}`;
  return sitePage({ title: words.checks, body }, place);
}
