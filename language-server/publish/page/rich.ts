/** Sentences of the document as markup: measures stay on one line, links lead to steps and to other procedures. */
import type { Rich, Run } from '../document/types.ts';
import { anchor, type Context } from './context.ts';
import { Html, html } from './html.ts';

export function rich(runs: Rich, context: Context): Html {
  return html`${runs.map((run) => piece(run, context))}`;
}

/** A list of sentences, each a paragraph of the class. */
export function paragraphs(sentences: readonly Rich[], name: string, context: Context): Html {
  return html`${sentences.map((one) => html`<p class="${name}">${rich(one, context)}</p>`)}`;
}

function piece(run: Run, context: Context): Html {
  switch (run.kind) {
    case 'text':
      return html`${run.text}`;
    case 'thing':
      return html`<span class="thing">${run.text}</span>`;
    case 'measure':
      return html`<span class="measure">${run.text}</span>`;
    case 'link': {
      const address = addressOf(run, context);
      return address === undefined ? html`${run.text}` : html`<a href="${address}">${run.text}</a>`;
    }
  }
}

function addressOf(run: Run & { kind: 'link' }, context: Context): string | undefined {
  if (run.to !== 'procedure')
    return context.numbers.has(run.target) ? `#${encodeURIComponent(anchor(run.target))}` : undefined;
  const link = context.doc.uses.find((one) => one.id === run.target);
  return link && context.options.links.procedure(link);
}

/** Links to steps by their numbers, in the order given. */
export function stepLinks(ids: readonly string[], context: Context): Html {
  const links = ids.flatMap((id) => {
    const number = context.numbers.get(id);
    return number === undefined ? [] : [html`<a href="#${encodeURIComponent(anchor(id))}">${number}</a>`];
  });
  return html`${links.map((link, at) => html`${at > 0 && ', '}${link}`)}`;
}

/** An attribute `class` with the names that are there, or nothing. */
export function classes(...names: readonly (string | undefined | false)[]): Html {
  const there = names.filter((name) => name);
  return there.length === 0 ? html`` : html` class="${there.join(' ')}"`;
}

export const NOTHING = new Html('');
