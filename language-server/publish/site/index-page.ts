/** The first page: every procedure and machine in lists that a search narrows down. */
import { type Html, html } from '../page/html.ts';
import { CHECKS, machineAddress, procedureAddress } from './addresses.ts';
import { sitePage } from './frame.ts';
import { SEARCH_SCRIPT } from './search-script.ts';
import type { PublishedMachine, PublishedProcedure, SiteInput, SitePlace } from './site.ts';

export function indexPage(input: SiteInput, place: SitePlace): string {
  const { words } = place;
  const body = html`<div id="search" class="search" role="search" hidden><label for="search-field">${words.search}</label> <input type="search" id="search-field" autocomplete="off" aria-describedby="search-note"> <span id="search-note" class="none">${words.searchNote}</span><p id="search-says" role="status" data-none="${words.searchNone}" data-some="${words.searchSome}"></p></div>
<section data-group="procedures" aria-labelledby="procedures"><h2 id="procedures">${words.procedures}</h2>${
    input.procedures.length === 0
      ? html`<p class="none">${words.none}</p>`
      : html`<ul class="entries">${sorted(input.procedures).map((one) => procedureEntry(one, place))}</ul>`
  }</section>
<section data-group="machines" aria-labelledby="machines"><h2 id="machines">${words.machines}</h2>${
    input.machines.length === 0
      ? html`<p class="none">${words.none}</p>`
      : html`<ul class="entries">${input.machines.map((one) => machineEntry(one, place))}</ul>`
  }</section>
<section aria-labelledby="checks"><h2 id="checks">${words.checks}</h2><p>${words.checksLead(input.checks.length)} <a href="${place.to(CHECKS)}">${words.checks}</a></p></section>`;
  return sitePage({ title: words.index, body, script: SEARCH_SCRIPT, top: true, cautions: true }, place);
}

/** By machine, then by number, then by title. */
function sorted(procedures: readonly PublishedProcedure[]): PublishedProcedure[] {
  const key = ({ document }: PublishedProcedure) => [
    document.machine.title,
    document.number ?? '',
    document.title,
  ];
  return [...procedures].sort((a, b) => {
    const [one, two] = [key(a), key(b)];
    const at = one.findIndex((part, index) => part !== two[index]);
    return at < 0 ? 0 : one[at]! < two[at]! ? -1 : 1;
  });
}

export function procedureEntry({ document, file }: PublishedProcedure, place: SitePlace): Html {
  const { words } = place;
  const found = [
    ...Object.values(document.things).flatMap((thing) => [thing.name, ...thing.alsoCalled, thing.partNumber]),
    ...document.lists.tools.map((tool) => tool.name),
    document.id,
    ...document.hazards.map((hazard) => hazard.label),
  ].filter((word) => word !== undefined);
  const number = [document.number, document.issue && `${words.issue} ${document.issue}`, document.date];
  const { errors, warnings } = document.check;
  return html`<li data-words="${[...new Set(found)].join(' ')}"><a href="${place.to(procedureAddress(file, document.id))}">${document.title}</a> <small>${[document.machine.title, ...number].filter((part) => part).join(' · ')}</small>${
    errors + warnings > 0 && html` <b class="severity error">${words.findingsOnTop}</b>`
  }</li>`;
}

function machineEntry({ sheet, file }: PublishedMachine, place: SitePlace): Html {
  const found = sheet.groups.flatMap((group) => group.entries.map((entry) => entry.name));
  return html`<li data-words="${[...new Set(found)].join(' ')}"><a href="${place.to(machineAddress(file, sheet.name))}">${sheet.title}</a></li>`;
}
