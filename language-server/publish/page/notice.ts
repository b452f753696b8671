/**
 * A notice in its standard form: a panel with sign and signal word, and below it the text. Under ANSI Z535.6 and ISO
 * 3864-2 the word says how badly somebody can be hurt (red, orange, yellow; blue for what is not about injury, without
 * the alert sign); under the military and aerospace books a warning is about people and a caution about equipment.
 */
import type { Notice } from '../document/types.ts';
import type { Context } from './context.ts';
import { type Html, html } from './html.ts';
import { rich } from './rich.ts';
import { sign } from './symbols.ts';

export function notice(one: Notice, context: Context): Html {
  const { signal, word, hazards, symbol, text } = one;
  if (signal === 'note')
    return html`<div class="note" role="note"><p><b class="note-word">${word}</b> ${rich(text, context)}</p></div>`;
  const names = hazards.map((hazard) => hazard.label).join(', ');
  return html`<div class="panel ${signalClass(one)}" role="note"><p class="signal">${alertSign(one, context)}<b>${word}</b>${
    names !== '' && html` <span class="about">${names}</span>`
  }</p><div class="said">${sign(symbol, context.signs)}<p>${rich(text, context)}</p></div></div>`;
}

/** The class that colours a signal word under its convention. */
export function signalClass({ signal, convention }: Pick<Notice, 'signal' | 'convention'>): string {
  return isMilitary(convention) ? `military sig-${signal}` : `sig-${signal}`;
}

/** The alert sign stands with words about injury only. */
function alertSign(one: Notice, context: Context): Html | undefined {
  const injury = isMilitary(one.convention) ? one.signal === 'warning' : one.signal !== 'notice';
  return injury ? sign('general', context.signs) : undefined;
}

function isMilitary(convention: string): boolean {
  return /MIL-STD|military/i.test(convention);
}
