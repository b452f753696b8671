/**
 * HTML by template, safe by construction: what is put into a template is escaped unless it is itself `Html`, and only
 * a template makes `Html`. So no text, name or path of a procedure can become markup, wherever it is put.
 *
 * Attribute values must stand in double quotes in the template; a test of the whole page with a validator and a
 * browser watches that. Addresses go through `local`, which takes nothing but a path of this site.
 */
import { printable } from '../../report/width.ts';

/** Markup that may be put into a page as it is. */
export class Html {
  readonly text: string;
  constructor(text: string) {
    this.text = text;
  }
}

export type Piece = Html | string | number | undefined | false | readonly Piece[];

/** Pieces are escaped, lists are joined, `undefined` and `false` vanish. */
export function html(strings: TemplateStringsArray, ...pieces: readonly Piece[]): Html {
  let text = strings[0]!;
  for (let at = 0; at < pieces.length; at++) text += written(pieces[at]!) + strings[at + 1]!;
  return new Html(text);
}

function written(piece: Piece): string {
  if (piece === undefined || piece === false) return '';
  if (piece instanceof Html) return piece.text;
  if (typeof piece === 'object') return piece.map(written).join('');
  return escaped(String(piece));
}

export function joined(pieces: readonly Piece[], between: Piece): Html {
  return new Html(pieces.map(written).join(written(between)));
}

/** Text for an element or a double-quoted attribute. Control characters and marks that turn writing show as signs. */
export function escaped(text: string): string {
  return printable(text)
    .replace(/\p{Surrogate}/gu, '\ufffd')
    .replace(/[&<>"']/g, (char) => ENTITIES[char]!);
}

const ENTITIES: Readonly<Record<string, string>> = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;',
  "'": '&#39;',
};

/** Data for a script to read, in an element that is never run. `<` is written so that nothing can end the element. */
export function dataBlock(id: string, data: unknown): Html {
  const text = JSON.stringify(data).replace(/[<>&\u2028\u2029]/g, unicode);
  return html`<script type="application/json" id="${id}">${new Html(text)}</script>`;
}

function unicode(char: string): string {
  return `\\u${char.charCodeAt(0).toString(16).padStart(4, '0')}`;
}

/** The address of a file of this site from a page that lies `depth` folders below its top. */
export function local(path: string, depth: number): string {
  const [file = '', mark] = path.split('#');
  const pieces = file.split('/').map(encodeURIComponent);
  const address = '../'.repeat(depth) + pieces.join('/');
  return mark === undefined ? address : `${address}#${encodeURIComponent(mark)}`;
}
