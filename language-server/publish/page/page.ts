/**
 * A procedure as one page: a file that holds everything it needs, works without a network and without scripts, on a
 * screen, on a phone and on paper. Pure: document in, text out, with the pictures that could not be taken.
 */
import type { FlowItem, ProcedureDocument } from '../document/types.ts';
import { howToScript } from '../howto/howto.ts';
import { closing, findings } from './closing.ts';
import { anchor, type Context, contextOf, type PageOptions, type RefusedPicture } from './context.ts';
import { flow } from './flow.ts';
import { dataBlock, Html, html, type Piece } from './html.ts';
import { needs } from './needs.ts';
import { classes } from './rich.ts';
import { WORK_SCRIPT } from './script/script.ts';
import { workData } from './script/work-data.ts';
import { cssString, shell } from './shell.ts';
import { STYLE } from './style/style.ts';
import { signDrawings } from './symbols.ts';

export interface Page {
  text: string;
  refused: RefusedPicture[];
}

export function procedurePage(doc: ProcedureDocument, options: PageOptions): Page {
  const context = contextOf(doc, options);
  // Parts first: they say which signs and conditions the page needs.
  const parts = html`${masthead(context)}
${warned(context)}
${contents(context)}
${choose(context)}
${needs(context)}
${drawings(context)}
<main id="job" tabindex="-1" aria-labelledby="job-title"><h2 id="job-title">${context.words.job}</h2>
${doc.elsewhere !== undefined && html`<p class="lead">${context.words.printedElsewhere(doc.elsewhere)}</p>`}
${flow(doc.flow, context)}
</main>
${closing(context)}`;
  const body = html`<a class="skip" href="#job">${context.words.skip}</a>
${signDrawings(context.signs)}
<div class="sheet">
${parts}
</div>
<div id="work" hidden></div>
${dataBlock('work-data', workData(doc, context.words, context.conditions.decidedBy()))}
<script type="application/ld+json">${new Html(howToScript(doc, anchor))}</script>`;
  const text = shell({
    language: doc.language,
    title: [doc.title, doc.machine.title, doc.number].filter((part) => part).join(' · '),
    description: doc.purpose || doc.title,
    styles: [STYLE, context.conditions.css() + paperHead(doc, context)],
    script: WORK_SCRIPT,
    body,
  });
  return { text, refused: context.refused };
}

function masthead(context: Context): Html {
  const { doc, words, options } = context;
  const machine = options.links.machine(doc.machine.id);
  const rows: [string, Piece][] = [
    [words.document, doc.number],
    [words.issue, doc.issue],
    [words.date, doc.date],
    [
      words.machine,
      machine === undefined ? doc.machine.title : html`<a href="${machine}">${doc.machine.title}</a>`,
    ],
  ];
  return html`<header class="masthead">${
    options.links.home !== undefined &&
    html`<p class="home"><a href="${options.links.home}">${words.site}</a></p>`
  }<h1>${doc.title}</h1>${doc.purpose !== '' && html`<p class="purpose">${doc.purpose}</p>`}<dl class="plate">${rows.map(
    ([name, value]) =>
      html`<div><dt>${name}</dt><dd>${value === undefined || value === '' ? html`<span class="none">${words.notStated}</span>` : value}</dd></div>`,
  )}</dl>${
    doc.changes.length > 0 && html`<p class="latest"><b>${words.changes}:</b> ${doc.changes[0]}</p>`
  }</header>`;
}

/** What holds a page back: hints and informations stand at the end only. */
const COUNTED: ReadonlySet<string> = new Set(['error', 'warning']);

/** On top of a page that was published in spite of its findings. */
function warned(context: Context): Piece {
  const { doc, words } = context;
  const counted = doc.check.findings.filter(({ severity }) => COUNTED.has(severity));
  if (counted.length === 0) return undefined;
  return html`<section class="warned" aria-labelledby="warned-title"><h2 id="warned-title">${words.findingsOnTop}</h2><p>${words.findingsWarn}</p>${findings(context, counted)}</section>`;
}

function contents(context: Context): Piece {
  const { doc, words, conditions } = context;
  const tasks = doc.flow.filter((item): item is FlowItem & { kind: 'task' } => item.kind === 'task');
  if (tasks.length < 2) return undefined;
  return html`<nav class="contents" aria-labelledby="contents-title"><h2 id="contents-title">${words.contents}</h2><ol>${tasks.map(
    ({ id, title, when }) =>
      html`<li${classes(conditions.classOf(when))}><a href="#${encodeURIComponent(anchor(id))}">${title}</a></li>`,
  )}</ol></nav>`;
}

function choose(context: Context): Piece {
  const { doc, words, conditions } = context;
  const axes = doc.appliesTo.axes.filter((axis) => axis.kind === 'variant');
  if (axes.length === 0) return undefined;
  return html`<section class="choose" aria-labelledby="choose-title"><h2 id="choose-title">${words.choose}</h2><p>${words.chooseNote}</p>${axes.map(
    (axis) => conditions.buttons(axis, words.chooseAll),
  )}</section>`;
}

/** Bars and rows of things that come off on some machines only go with the reader's choice, as steps and lists do. */
function drawings({ doc, options, conditions }: Context): Piece {
  const list = options.drawings?.page ?? [];
  if (list.length > 0)
    for (const id of new Set(doc.tally.map((one) => one.id))) {
      const whens = doc.tally.flatMap((one) => (one.id === id ? [one.when] : []));
      if (whens.includes(undefined)) continue;
      const any = whens.flatMap((one) => one?.any ?? []);
      const named = `[data-thing~=${cssString(id)}]`;
      const selector = `.dowel-chart g${named}:not([data-gathered]),.drawn tr${named}`;
      conditions.also(selector, { sentence: '', any });
    }
  return list.map(
    ({ title, drawing }, at) =>
      html`<section class="drawing" aria-labelledby="drawing-${at}"><h2 id="drawing-${at}">${title}</h2>${drawing}</section>`,
  );
}

/** What stands on every sheet of paper: document, issue and page. */
function paperHead(doc: ProcedureDocument, { words }: Context): string {
  const parts = [doc.number, doc.issue && `${words.issue} ${doc.issue}`, doc.date, doc.title];
  const left = parts.filter((part) => part).join(' · ');
  return `@page{@top-left{content:${cssString(left)}}@bottom-right{content:counter(page)" / "counter(pages)}}`;
}
