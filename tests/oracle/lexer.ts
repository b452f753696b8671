/**
 * Cuts `.dowel` text into tokens, for the oracle's own reader. Not the product's lexer, and it shares nothing
 * with it: what it does not know it throws on, so that gaps show.
 */

export interface Token {
  type: 'word' | 'text' | 'number' | 'unit' | 'position' | 'mark';
  /** The word, the mark, the number as typed, the quoted text without its quotes, the position without `#`. */
  text: string;
  start: number;
  end: number;
  /** Counted from 1. */
  line: number;
  /** First on its line. */
  begins: boolean;
}

const UNITS = [
  ...['N', 'kN', 'Nm', 'lbf', 'ozf', 'kgf', 'lb', 'lbs', 'oz', 'kg', 'g', 't'],
  ...[
    'mm',
    'cm',
    'm',
    'km',
    'in',
    'inch',
    'ft',
    'yd',
    'mile',
    'miles',
    'micron',
    'µm',
    'μm',
    'um',
    'mil',
    'thou',
  ],
  ...['bar', 'mbar', 'Pa', 'hPa', 'kPa', 'MPa', 'psi', 'atm', 'inHg', 'mmHg', 'torr', 'Torr'],
  ...['L', 'l', 'mL', 'ml', 'dL', 'cl', 'cc', 'cm³', 'mm²', 'mm³', 'm³', 'pt', 'qt', 'gal', 'pint', 'pints'],
  ...['V', 'kV', 'mV', 'A', 'mA', 'W', 'kW', 'hp', 'J', 'kJ', 'Hz', 'Ω', 'kΩ', 'MΩ', 'ohm', 'kohm', 'Mohm'],
  ...['°C', '°F', '°', 'deg', 'degC', 'degF', 'K', '%', 's', 'min', 'h', 'd', 'day', 'days', 'hours', 'week'],
  ...['weeks', 'turn', 'turns', 'rev', 'rpm', 'dB'],
];
const ONE_UNIT = UNITS.toSorted((a, b) => b.length - a.length).join('|');
const UNIT = new RegExp(`(?:${ONE_UNIT})(?:[·.*/](?:${ONE_UNIT}))*(?![\\p{L}\\p{N}_-])`, 'uy');
const WORD = /[\p{L}_][\p{L}\p{N}_-]*/uy;
const NUMBER = /\d+(?:\.\d+)?/y;
const POSITION = /#[\p{L}\p{N}_-]+/uy;
const TEXT = /"((?:[^"\\\n]|\\.)*)"/y;
const MARK = /\.\.|\+-|\+\/-|[{}(),:;=±+\-−–*/.·×<>]/uy;
const SPACE = /(?:[ \t\r]|\/\/[^\n]*)+/y;

export function tokensOf(source: string): Token[] {
  const tokens: Token[] = [];
  let at = 0;
  let line = 1;
  let begins = true;
  const take = (pattern: RegExp): RegExpExecArray | null => {
    pattern.lastIndex = at;
    return pattern.exec(source);
  };
  const push = (type: Token['type'], text: string, length: number) => {
    tokens.push({ type, text, start: at, end: at + length, line, begins });
    at += length;
    begins = false;
  };
  while (at < source.length) {
    if (source[at] === '\n') {
      at++;
      line++;
      begins = true;
      continue;
    }
    const space = take(SPACE);
    if (space) {
      at += space[0].length;
      continue;
    }
    const last = tokens.at(-1);
    const unit = last?.type === 'number' && !begins ? take(UNIT) : null;
    // `stage 2 in order across`: the inch does not stand before `order` or `turn`.
    if (unit && !/^in\s+(order|reverse|turn)\b/.test(source.slice(at, at + 20))) {
      push('unit', unit[0], unit[0].length);
      continue;
    }
    const word = take(WORD);
    if (word) {
      push('word', word[0], word[0].length);
      continue;
    }
    const number = take(NUMBER);
    if (number) {
      push('number', number[0], number[0].length);
      continue;
    }
    const position = take(POSITION);
    if (position) {
      push('position', position[0].slice(1), position[0].length);
      continue;
    }
    const text = take(TEXT);
    if (text) {
      push('text', text[1]!.replace(/\\(.)/g, '$1'), text[0].length);
      continue;
    }
    const mark = take(MARK);
    if (mark) {
      push('mark', mark[0], mark[0].length);
      continue;
    }
    throw new Error(`line ${line}: the oracle cannot read ${JSON.stringify(source.slice(at, at + 20))}`);
  }
  return tokens;
}
