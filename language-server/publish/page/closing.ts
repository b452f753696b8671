/** What stands after the job: the last count, waste, troubles, waivers, the check, sources and cautions. */
import type { HandCount, ProcedureDocument } from '../document/types.ts';
import type { Context } from './context.ts';
import { type Html, html, type Piece } from './html.ts';
import { block, bullets, table } from './needs.ts';
import { paragraphs, stepLinks } from './rich.ts';

export function closing(context: Context): Html {
  const { doc, words } = context;
  const { check } = doc;
  return html`<section id="after" aria-labelledby="after-title"><h2 id="after-title">${words.after}</h2>
${block('ends-with', words.endsWith, doc.endsWith.length > 0 && paragraphs(doc.endsWith, 'state', context), words.asUsual)}
${block('left-at-end', words.leftAtEnd, leftAtEnd(context), words.none)}
${block('tally', words.tally, tally(context), words.none)}<p id="tally-says" class="tally-says" role="status"></p>
${block('waste', words.waste, waste(context), words.none)}
${block('troubles', words.troubles, troubles(context), words.none)}
${block('waivers', words.waivers, waivers(context), words.none)}
</section>
<section id="record" aria-labelledby="record-title"><h2 id="record-title">${words.checked}</h2>
<p>${check.sentence}</p>${check.findings.length > 0 && findings(context, check.findings)}
<h3>${words.cautions}</h3>${doc.cautions.map((caution) => html`<p class="caution-text">${caution}</p>`)}
${block(
  'changes',
  words.changes,
  bullets(
    doc.changes.map((text) => ({ text })),
    context,
  ),
  words.none,
)}
${block(
  'sources',
  words.sources,
  bullets(
    doc.sources.map(({ file, date }) => ({ text: `${file}, ${date ?? words.noDate}` })),
    context,
  ),
  words.none,
)}
</section>`;
}

/** The findings as a list, for the top of a page that was published in spite of them, and for its end. */
export function findings({ options }: Context, list: ProcedureDocument['check']['findings']): Html {
  return html`<ul class="findings">${list.map(({ check, severity, message, file, line }) => {
    const address = options.links.check(check);
    const name = address === undefined ? html`${check}` : html`<a href="${address}">${check}</a>`;
    return html`<li><b class="severity ${severity}">${severity}</b> ${name}: ${message} <small>${file}:${line}</small></li>`;
  })}</ul>`;
}

function leftAtEnd(context: Context): Piece {
  const { work } = context.words;
  const states = {
    off: work.benchOff,
    aside: work.benchAside,
    apart: work.benchApart,
    away: work.benchAway,
    discarded: work.benchDiscarded,
  };
  return bullets(
    context.doc.leftAtEnd.map(({ name, count, state, when }) => ({
      when,
      text: `${numbered(name, count)}: ${states[state]}`,
    })),
    context,
  );
}

function tally(context: Context): Piece {
  const { doc, words } = context;
  if (doc.tally.length === 0) return undefined;
  return html`<p>${words.tallyNote}</p>${table(
    context,
    [words.part, words.cameOff, words.wentBack, words.fresh, words.discarded],
    doc.tally.map(({ name, count, off, back, fresh, discarded, when }) => {
      const counts = [off, back, fresh, discarded];
      const open = counts.some(({ least, most }) => least < most);
      return {
        when,
        cells: [
          html`${numbered(name, count)}${open && html` <small>(${words.dependsOnTheDay})</small>`}`,
          ...counts.map((one) => handCount(one, count ?? 1, context)),
        ],
      };
    }),
  )}`;
}

/** `4`, `0 or 4` where it is done once or not at all, `0 to 8` where there is more between. */
function handCount({ least, most }: HandCount, count: number, { words }: Context): string {
  if (least === most) return String(least);
  return most - least === count ? words.either(least, most) : words.between(least, most);
}

function waste(context: Context): Piece {
  const { doc, words } = context;
  return table(
    context,
    [words.waste, words.disposal],
    doc.waste.map(({ name, count, amount, disposal, when }) => ({
      when,
      cells: [amount ? `${name}, ${amount.text}` : numbered(name, count), disposal],
    })),
  );
}

function troubles(context: Context): Piece {
  const { doc, words } = context;
  return table(
    context,
    [words.sign, words.whatToDo, words.atSteps],
    doc.troubles.map(({ sign, remedy, step, when }) => ({
      when,
      cells: [sign, remedy.join(' '), stepLinks([step], context)],
    })),
  );
}

function waivers(context: Context): Piece {
  const { doc, words, options } = context;
  return bullets(
    doc.waivers.map(({ check, title, reason, step }) => {
      const address = options.links.check(check);
      const name = address === undefined ? html`${check}` : html`<a href="${address}">${check}</a>`;
      return {
        text: html`${name}: ${title} ${words.because}: ${reason} ${step !== undefined && stepLinks([step], context)}`,
      };
    }),
    context,
  );
}

function numbered(name: string, count: number | undefined): string {
  return count === undefined || count === 1 ? name : `${count} × ${name}`;
}
