/** The page of a machine: its variants, its things, its drawings, and the procedures for it. */
import { html } from '../page/html.ts';
import { sitePage } from './frame.ts';
import { procedureEntry } from './index-page.ts';
import type { PublishedMachine, PublishedProcedure, SitePlace } from './site.ts';

export function machinePage(
  { sheet, drawings = [] }: PublishedMachine,
  procedures: readonly PublishedProcedure[],
  place: SitePlace,
): string {
  const { words } = place;
  const body = html`<section aria-labelledby="procedures"><h2 id="procedures">${words.procedures}</h2>${
    procedures.length === 0
      ? html`<p class="none">${words.none}</p>`
      : html`<ul class="entries">${procedures.map((one) => procedureEntry(one, place))}</ul>`
  }</section>
<section aria-labelledby="variants"><h2 id="variants">${words.variants}</h2>${
    sheet.variants.length === 0
      ? html`<p class="none">${words.none}</p>`
      : html`<ul>${sheet.variants.map(({ name, values }) => html`<li>${name}: ${values.join(', ')}</li>`)}</ul>`
  }</section>
${drawings.map(
  ({ title, drawing }, at) =>
    html`<section class="drawing" aria-labelledby="drawing-${at}"><h2 id="drawing-${at}">${title}</h2>${drawing}</section>`,
)}
${sheet.groups.map(
  ({ kind, title, entries }) =>
    html`<section aria-labelledby="kind-${kind}"><h2 id="kind-${kind}">${title}</h2><table class="list"><thead><tr><th scope="col">${words.name}</th><th scope="col">${words.facts}</th></tr></thead><tbody>${entries.map(
      ({ name, count, facts }) =>
        html`<tr><th scope="row">${name}${count !== undefined && count > 1 && ` ×${count}`}</th><td>${facts.join('; ')}</td></tr>`,
    )}</tbody></table></section>`,
)}`;
  return sitePage({ title: sheet.title, body, cautions: true }, place);
}
