/**
 * Drawings as text: elements, escaped text, and how wide text will be. Colours are `currentColor` and custom
 * properties with a fallback, so that a drawing follows the page into dark and high contrast; there is no style
 * sheet in it that could reach the page. Plain strings, no DOM.
 */

/** What a drawing says, for who cannot see it. */
export type TextAlternative =
  | {
      readonly kind: 'table';
      readonly caption: string;
      readonly head: string[];
      readonly rows: string[][];
      /** The thing that each row is about, where each is about one. */
      readonly things?: string[];
    }
  | { readonly kind: 'list'; readonly caption: string; readonly sentences: string[] };

export interface Drawing {
  /** One `<svg>` element, with `<title>` and `<desc>`. */
  readonly svg: string;
  /** Natural size in px; the page may make it smaller. */
  readonly width: number;
  readonly height: number;
  readonly title: string;
  readonly alternative: TextAlternative;
  /** What is to stand under it, where it is not drawn. */
  readonly caption?: readonly string[];
}

export type Attributes = Readonly<Record<string, string | number | undefined>>;

/** Colour of what text stands on, put around letters that cross a line. */
export const PAPER = 'var(--dowel-paper, Canvas)';
/** Colour of what is to be seen first. */
export const ACCENT = 'var(--dowel-accent, currentColor)';

const ESCAPES: Readonly<Record<string, string>> = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;',
  "'": '&#39;',
};

/** Text as it stands in an element or an attribute; what XML does not allow at all is left out. */
export function escapeText(text: string): string {
  let result = '';
  for (const sign of text) if (isAllowed(sign.codePointAt(0)!)) result += ESCAPES[sign] ?? sign;
  return result;
}

/** The characters of XML 1.0 (production 2). */
function isAllowed(code: number): boolean {
  if (code < 0x20) return code === 0x09 || code === 0x0a || code === 0x0d;
  return code < 0xd800 || (code > 0xdfff && code !== 0xfffe && code !== 0xffff);
}

/** One element. Children are markup already; attributes are escaped here, and left out where undefined. */
export function element(name: string, attributes: Attributes, ...children: string[]): string {
  const typed = Object.entries(attributes)
    .filter(([, value]) => value !== undefined)
    .map(([key, value]) => ` ${key}="${escapeText(typeof value === 'number' ? short(value) : value!)}"`)
    .join('');
  return children.length === 0 ? `<${name}${typed}/>` : `<${name}${typed}>${children.join('')}</${name}>`;
}

/** Text at a place, with a rim in the colour of the paper. */
export function label(text: string, x: number, y: number, attributes: Attributes = {}): string {
  return element(
    'text',
    {
      x,
      y,
      stroke: PAPER,
      'stroke-width': 3,
      'paint-order': 'stroke',
      'stroke-linejoin': 'round',
      ...attributes,
    },
    escapeText(text),
  );
}

export interface Frame {
  readonly width: number;
  readonly height: number;
  readonly title: string;
  readonly description: string;
  /** Put before every id; unique on the page. */
  readonly prefix: string;
  /** What kind of drawing it is, as a class. */
  readonly kind: string;
  /** A line below everything, for a drawing that stands alone: what it defers to. */
  readonly foot?: string | undefined;
}

/** The whole `<svg>`, named by its title and description. */
export function svgOf(frame: Frame, ...children: string[]): string {
  const { width, prefix } = frame;
  const foot = frame.foot === undefined ? [] : wrapped(frame.foot, width - 16, SMALL);
  const height = frame.height + (foot.length > 0 ? foot.length * FOOT_LINE + 8 : 0);
  return element(
    'svg',
    {
      xmlns: 'http://www.w3.org/2000/svg',
      class: `dowel-drawing dowel-${frame.kind}`,
      viewBox: `0 0 ${short(width)} ${short(height)}`,
      width,
      height,
      role: 'img',
      'aria-labelledby': `${prefix}-title ${prefix}-desc`,
      'font-family': 'var(--dowel-font, system-ui, "Liberation Sans", Arial, sans-serif)',
      'font-size': SIZE,
      fill: 'currentColor',
    },
    element('title', { id: `${prefix}-title` }, escapeText(frame.title)),
    element('desc', { id: `${prefix}-desc` }, escapeText(frame.description)),
    ...children,
    ...foot.map((line, at) =>
      label(line, 8, frame.height + 8 + (at + 0.7) * FOOT_LINE, { 'font-size': SMALL, stroke: 'none' }),
    ),
  );
}

/** Height of a line of small text, px. */
const FOOT_LINE = 16;

/** Size of plain text, and of small text, in px. */
export const SIZE = 13;
export const SMALL = 11.5;

/** Advance widths in thousandths of the size, of a wide sans serif (DejaVu Sans, from memory, rounded up). */
const WIDTHS: readonly [signs: string, width: number][] = [
  ["ijl.,:;!|'’` ", 345],
  ['frtI()[]-·/"', 430],
  ['wMWGOQ@%…+=<>', 890],
  ['m—', 1000],
];
const CAPITAL = 770;
const OTHER = 645;
const IDEOGRAPH = 1020;

/**
 * About how wide a text is in px. On the large side: the page may have a narrower font, and a label that is given
 * too much room does no harm.
 */
export function textWidth(text: string, size = SIZE): number {
  let sum = 0;
  for (const sign of text) {
    const known = WIDTHS.find(([signs]) => signs.includes(sign));
    if (known) sum += known[1];
    else if (sign.codePointAt(0)! > 0x2e80) sum += IDEOGRAPH;
    else sum += /\p{Lu}/u.test(sign) ? CAPITAL : OTHER;
  }
  return (sum * size) / 1000;
}

/** The text, cut off with `…` where it is wider than `room`. */
export function fitted(text: string, room: number, size = SIZE): string {
  if (textWidth(text, size) <= room) return text;
  const signs = [...text];
  while (signs.length > 1 && textWidth(`${signs.join('').trimEnd()}…`, size) > room) signs.pop();
  return `${signs.join('').trimEnd()}…`;
}

/** Words in lines no wider than `room`; a word that is wider alone is cut. At most `most` lines. */
export function wrapped(text: string, room: number, size = SIZE, most = Number.POSITIVE_INFINITY): string[] {
  const lines: string[] = [];
  let line = '';
  for (const word of text.split(/\s+/).filter((one) => one !== '')) {
    const longer = line === '' ? word : `${line} ${word}`;
    if (line === '' || textWidth(longer, size) <= room) line = longer;
    else {
      lines.push(line);
      line = word;
    }
  }
  if (line !== '') lines.push(line);
  if (lines.length > most) lines.splice(most - 1, lines.length, lines.slice(most - 1).join(' '));
  return lines.map((one) => fitted(one, room, size));
}

/** A number with two decimals at the most. */
export function short(value: number): string {
  return String(Math.round(value * 100) / 100);
}
