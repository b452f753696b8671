/**
 * One step: its notices before it, the box to tick, the sentence, what belongs to it. The box is a plain input, so it
 * works without a script; the script only keeps it.
 */
import type { Fastening, FlowItem, Picture, Step } from '../document/types.ts';
import { anchor, type Context } from './context.ts';
import { type Html, html, type Piece } from './html.ts';
import { measurement } from './measurement.ts';
import { notice } from './notice.ts';
import { pictureData } from './pictures.ts';
import { recordField } from './records.ts';
import { classes, paragraphs, rich } from './rich.ts';

export function step(item: Step, context: Context, inner: (items: FlowItem[]) => Html): Html {
  const { words, conditions, options, doc } = context;
  const id = anchor(item.id);
  const { detail } = item;
  const records = doc.records.filter((record) => item.records.includes(record.id));
  return html`<div${classes('step', conditions.classOf(item.when))} id="${id}">${item.notices.map((one) => notice(one, context))}<div class="line"><label class="tick"><input type="checkbox" id="${id}-done" data-step="${item.id}"><span class="hidden">${words.stepDone(item.number)}</span></label><div class="what">${
    item.when && html`<p class="under">${words.under(item.when.sentence)}</p>`
  }<p class="do"><span class="number">${item.number}</span> ${rich(item.heading, context)}</p>${paragraphs(item.more, 'more', context)}${detail.fastening.map((one) => fastening(one, item, context))}${paragraphs(item.said, 'author', context)}${
    item.expect.length > 0 &&
    html`<p class="expect"><b>${words.expect}</b> ${item.expect.map((one) => html`${rich(one, context)} `)}</p>`
  }${records.map((record) => recordField(record, context))}${
    // What is read is written down first, and then looked up.
    item.measurement && measurement(item.measurement, item, context, inner)
  }${options.drawings?.step(item.id)}${item.pictures.map((picture) => figure(picture, item, context))}${item.waivers.map(
    (waiver) =>
      html`<p class="waived">${words.waivers}: ${waiver.title} ${words.because}: ${waiver.reason}</p>`,
  )}</div></div></div>`;
}

/** Stages and wrench settings, where the sentence alone would be long. */
function fastening(one: Fastening, item: Step, context: Context): Piece {
  const { words } = context;
  const said = new Set(item.more.map((sentence) => sentence.map((run) => run.text).join('')));
  const own = item.said.map((sentence) => sentence.map((run) => run.text).join('')).join(' ');
  const stages =
    one.stages.length > 1 &&
    html`<p class="table-title">${words.stages}: ${one.name}</p><ol class="stages">${one.stages.map((stage) => html`<li>${stage.sentence}</li>`)}</ol>`;
  const rest = [
    one.order && html`${one.order.sentence}`,
    ...one.wrenches.map(({ sentence, setting, because }) =>
      // What the author says himself is not said again; why it is so, is.
      own.includes(setting.text)
        ? because === undefined
          ? undefined
          : html`${because}`
        : said.has(sentence)
          ? undefined
          : html`${sentence}${because !== undefined && ` ${because}`}`,
    ),
  ].filter((part) => part !== undefined && !said.has(part.text));
  return html`${stages}${rest.map((part) => html`<p class="more">${part}</p>`)}`;
}

function figure(picture: Picture, item: Step, context: Context): Html {
  const found = context.options.pictures(item.source.file, picture.file);
  const data = pictureData(found);
  if ('refused' in data) {
    context.refused.push({
      file: picture.file,
      from: item.source.file,
      line: item.source.line,
      why: data.refused,
    });
    return html`<p class="missing">${context.words.pictureMissing(picture.alt || picture.file)}</p>`;
  }
  return html`<figure><img src="${data.address}" alt="${picture.alt}"><figcaption>${picture.alt}</figcaption></figure>`;
}
