/** What a job needs, before the first step: every list is there, and an empty one says so. */
import type { HazardAtAGlance, When } from '../document/types.ts';
import type { Context } from './context.ts';
import { type Html, html, joined, type Piece } from './html.ts';
import { classes, paragraphs, rich, stepLinks } from './rich.ts';
import { sign } from './symbols.ts';

export function needs(context: Context): Html {
  const { doc, words } = context;
  const { lists, appliesTo } = doc;
  const { times } = lists;
  return html`<section id="before" aria-labelledby="before-title"><h2 id="before-title">${words.before}</h2>
<dl class="facts">
${fact(words.appliesTo, html`<p>${appliesTo.sentence}</p>${machines(context)}`)}
${fact(words.serialNumbers, appliesTo.serialNumbers.length > 0 && appliesTo.serialNumbers.join(', '), words.notStated)}
${fact(words.people, people(context), words.notStated)}
${fact(words.skill, lists.skill, words.notStated)}
${fact(
  words.time,
  (times.stated || times.waitingMinutes > 0) &&
    joined(
      [
        times.stated?.text ?? words.notStated,
        times.waitingMinutes > 0 && words.ofWhichWaiting(times.waiting.text),
        ...times.waitingByVariant.map(
          ({ when, text }) =>
            html`<span${classes(context.conditions.classOf(when))}>${words.onlyInside(when.sentence)}: ${text}</span>`,
        ),
      ].filter((part) => part !== false),
      '; ',
    ),
  words.notStated,
)}
${fact(
  words.conditions,
  bullets(
    lists.conditions.map((text) => ({ text })),
    context,
  ),
  words.none,
)}
${fact(words.startsWith, doc.startsWith.length > 0 && paragraphs(doc.startsWith, 'state', context), words.asUsual)}
${fact(
  words.protection,
  bullets(
    lists.protection.map(({ name, when }) => ({ text: name, when })),
    context,
  ),
  words.none,
)}
</dl>
${block('tools', words.tools, tools(context), words.none)}
${block('new-parts', words.newParts, newParts(context), words.none)}
${block('fluids', words.fluids, fluids(context), words.none)}
${block('consumables', words.consumables, consumables(context), words.none)}
${block('hazards', words.hazards, hazards(context), words.none)}
${differences(context)}
${used(context)}
</section>`;
}

function machines({ doc, options }: Context): Html | undefined {
  // One machine alone is named on the plate.
  if (doc.machines.length < 2) return undefined;
  const named = doc.machines.map(({ id, title }) => {
    const address = options.links.machine(id);
    return address === undefined ? html`${title}` : html`<a href="${address}">${title}</a>`;
  });
  return html`<p>${joined(named, ', ')}</p>`;
}

function people({ doc, words }: Context): Piece {
  const { people: count, peopleAtOnce } = doc.lists;
  if (count === undefined) return peopleAtOnce > 1 && words.peopleAtOnce(peopleAtOnce);
  return peopleAtOnce > count ? `${count}; ${words.peopleAtOnce(peopleAtOnce)}` : String(count);
}

function tools(context: Context): Piece {
  const { words, doc } = context;
  return table(
    context,
    [words.tool, words.range, words.partNumber],
    doc.lists.tools.map(({ name, range, accuracy, length, partNumber, listed, when }) => ({
      when,
      cells: [
        html`${name}${!listed && html` <small>(${words.notListed})</small>`}`,
        joined(
          [range?.text, accuracy && `± ${accuracy.text.replace(/^±\s*/, '')}`, length?.text].filter(
            (part) => part,
          ),
          '; ',
        ),
        partNumber,
      ],
    })),
  );
}

function newParts(context: Context): Piece {
  const { words, doc } = context;
  const names = new Map(
    [...doc.lists.kits, ...doc.lists.newParts].map((entry) => [entry.id, entry.name] as const),
  );
  const rows = doc.lists.newParts.map((part) => ({
    when: part.when,
    cells: [
      html`${part.name}${[
        part.kit !== undefined && words.withKit(names.get(part.kit) ?? part.kit),
        part.comesWith !== undefined && words.comesWith(names.get(part.comesWith) ?? part.comesWith),
        part.ifFound && words.ifFound,
      ].map((remark) => remark && html` <small>(${remark})</small>`)}`,
      part.count,
      part.partNumber,
    ],
  }));
  const kits = doc.lists.kits.map((kit) => ({
    when: kit.when,
    cells: [
      html`${kit.name} <small>(${words.contains(kit.contains.map(counted).join(', '))})</small>`,
      kit.count,
      kit.partNumber,
    ],
  }));
  return table(context, [words.part, words.howMany, words.partNumber], [...kits, ...rows]);
}

function counted({ name, count }: { name: string; count?: number }): string {
  return count === undefined || count === 1 ? name : `${count} × ${name}`;
}

function fluids(context: Context): Piece {
  const { words, doc } = context;
  return bullets(
    doc.lists.fluids.map(({ name, amount, into, asNeeded, partNumber, when }) => ({
      when,
      text: [
        amount ? `${name}, ${amount.text}` : asNeeded ? `${name}, ${words.asNeeded}` : name,
        // A system is often called as the fluid in it is.
        into.some((one) => one !== name) && words.into(into.join(', ')),
        partNumber !== undefined && `${words.partNumber} ${partNumber}`,
      ]
        .filter((part) => part)
        .join('; '),
    })),
    context,
  );
}

function consumables(context: Context): Piece {
  const { words, doc } = context;
  return bullets(
    doc.lists.consumables.map(({ name, openTime, curingTime, partNumber, when }) => ({
      when,
      text: [
        name,
        openTime && words.openTime(openTime.text),
        curingTime && words.curingTime(curingTime.text),
        partNumber !== undefined && `${words.partNumber} ${partNumber}`,
      ]
        .filter((part) => part)
        .join('; '),
    })),
    context,
  );
}

function hazards(context: Context): Piece {
  const { doc, words } = context;
  if (doc.hazards.length === 0) return undefined;
  return html`<ul class="glance">${told(doc.hazards).map(
    (hazard) =>
      html`<li${classes(context.conditions.classOf(hazard.when))}>${sign(hazard.symbol, context.signs)}<div><p><b class="word sig-${hazard.signal}">${hazard.word}</b> <b>${hazard.label}</b></p><p>${rich(hazard.text, context)}</p>${
        hazard.steps.length > 0 &&
        html`<p class="at">${words.atSteps} ${stepLinks(hazard.steps, context)}</p>`
      }</div></li>`,
  )}</ul>`;
}

/** Hazards that one notice names together are one entry: its text is read once. */
function told(hazards: readonly HazardAtAGlance[]): HazardAtAGlance[] {
  const groups = new Map<string, HazardAtAGlance>();
  for (const hazard of hazards) {
    const { signal, text, steps, when } = hazard;
    const key = JSON.stringify([signal, text, steps, when]);
    const known = groups.get(key);
    groups.set(key, known ? { ...known, label: `${known.label}, ${hazard.label}` } : hazard);
  }
  return [...groups.values()];
}

function differences(context: Context): Piece {
  const { doc, words } = context;
  if (doc.variantDifferences.length === 0) return undefined;
  const rows = doc.variantDifferences.map(
    ({ when, sentences, steps }) =>
      html`<tr${classes(context.conditions.classOf(when))}><th scope="row">${words.under(when.sentence)}</th><td>${sentences.map((one) => html`<p>${one}</p>`)}<p class="at">${words.atSteps} ${stepLinks(steps, context)}</p></td></tr>`,
  );
  return html`<h3 id="differences">${words.differences}</h3><section class="scroll" aria-labelledby="differences" tabindex="0"><table class="small"><tbody>${rows}</tbody></table></section>`;
}

function used({ doc, words, options }: Context): Piece {
  if (doc.uses.length === 0) return undefined;
  const items = doc.uses.map((link) => {
    const address = options.links.procedure(link);
    const title = address === undefined ? html`${link.title}` : html`<a href="${address}">${link.title}</a>`;
    const number = [link.number, link.issue && `${words.issue} ${link.issue}`]
      .filter((part) => part)
      .join(', ');
    return html`<li>${title}${number !== '' && `, ${number}`}${link.elsewhere !== undefined && html` <small>(${words.printedElsewhere(link.elsewhere)})</small>`}</li>`;
  });
  return html`<h3>${words.usedProcedures}</h3><ul>${items}</ul>`;
}

// ------------------------------------------------------------ forms

/** A heading with what stands under it, or with the word that there is nothing. */
export function block(id: string, title: string, body: Piece, none: string): Html {
  return html`<h3 id="${id}">${title}</h3>${body ? html`${body}` : html`<p class="none">${none}</p>`}`;
}

function fact(name: string, value: Piece, none?: string): Html {
  const empty = value === undefined || value === false || value === '';
  return html`<div><dt>${name}</dt><dd>${empty ? html`<span class="none">${none ?? ''}</span>` : value}</dd></div>`;
}

export function bullets(
  entries: readonly { text: Piece; when?: When | undefined }[],
  context: Context,
): Piece {
  if (entries.length === 0) return undefined;
  return html`<ul>${entries.map(
    ({ text, when }) =>
      html`<li${classes(context.conditions.classOf(when))}>${text}${when && html` <small>(${context.words.onlyInside(when.sentence)})</small>`}</li>`,
  )}</ul>`;
}

/** A table with a heading row. Columns in which no row has anything are left out. */
export function table(
  context: Context,
  heads: readonly string[],
  rows: readonly { cells: readonly Piece[]; when?: When | undefined }[],
): Piece {
  if (rows.length === 0) return undefined;
  const filled = heads.map((_, at) => rows.some(({ cells }) => html`${cells[at]}`.text !== ''));
  const shown = <T>(list: readonly T[]) => list.filter((_, at) => filled[at]);
  return html`<table class="list"><thead><tr>${shown(heads).map((head) => html`<th scope="col">${head}</th>`)}</tr></thead><tbody>${rows.map(
    ({ cells, when }) =>
      html`<tr${classes(context.conditions.classOf(when))}>${shown(cells).map((cell, at) => {
        const only =
          at === 0 && when ? html` <small>(${context.words.onlyInside(when.sentence)})</small>` : undefined;
        return html`<td>${cell}${only}</td>`;
      })}</tr>`,
  )}</tbody></table>`;
}
