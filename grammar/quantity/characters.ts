/**
 * Where numbers and blanks begin and end in a text.
 *
 * Not here: units (lexical.ts), what follows a number (scan.ts).
 */

import { type TypedNumber, typedNumber } from './quantity.ts';

export interface NumberAt {
  readonly number: TypedNumber;
  readonly from: number;
  readonly to: number;
}

export function numberAt(text: string, from: number): NumberAt | undefined {
  const signed = text[from] === '+' || isMinus(text, from);
  const read = unsignedAt(text, signed ? from + 1 : from);
  if (read === undefined || !signed) return read;
  const number = typedNumber(text.slice(from, read.to));
  return number === undefined ? undefined : { number, from, to: read.to };
}

export function unsignedAt(text: string, from: number): NumberAt | undefined {
  let to = digits(text, from);
  if (to === from && !(text[to] === '.' && isDigit(text, to + 1))) return undefined;
  const whole = to;
  if (text[to] === '.' && isDigit(text, to + 1)) to = digits(text, to + 1);
  else if (text[to] === '/' && isDigit(text, to + 1)) to = digits(text, to + 1);
  else if (text[to] === ' ') {
    const top = digits(text, to + 1);
    if (top > to + 1 && text[top] === '/' && isDigit(text, top + 1)) to = digits(text, top + 1);
  }
  const number = typedNumber(text.slice(from, to)) ?? typedNumber(text.slice(from, whole));
  return number === undefined ? undefined : { number, from, to };
}

/** Blanks on the same line, the no-break space among them. */
export function blanks(text: string, from: number): number {
  let at = from;
  while (text[at] === ' ' || text[at] === '\t' || text[at] === '\u00a0' || text[at] === '\u202f') at += 1;
  return at;
}

export function isDigit(text: string, at: number): boolean {
  const code = text.charCodeAt(at);
  return code >= 0x30 && code <= 0x39;
}

export function isMinus(text: string, at: number): boolean {
  return text[at] === '-' || text[at] === '−';
}

export function isComma(text: string, at: number): boolean {
  return text[at] === ',' && isDigit(text, at + 1);
}

function digits(text: string, from: number): number {
  let at = from;
  while (isDigit(text, at)) at += 1;
  return at;
}
