/**
 * The frame of every page: one file with its own style and script inside, and a policy that lets nothing else in: no
 * network, no other script, no form that goes anywhere.
 */
import { Html, html, type Piece } from './html.ts';
import { policyHash } from './sha256.ts';

export interface Shell {
  language: string;
  title: string;
  description: string;
  /** Style sheets, each an element of its own. Must not hold `</`. */
  styles: readonly string[];
  /** The page's own script; must not hold `</`. */
  script?: string;
  body: Piece;
  bodyClass?: string;
}

export function shell({ language, title, description, styles, script, body, bodyClass }: Shell): string {
  const kept = styles.filter((style) => style !== '');
  const policy = [
    "default-src 'none'",
    `style-src ${kept.map(hashOf).join(' ')}`,
    ...(script === undefined ? [] : [`script-src ${hashOf(script)}`]),
    'img-src data:',
    "base-uri 'none'",
    "form-action 'none'",
  ].join('; ');
  return html`<!DOCTYPE html>
<html lang="${language}">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="${policy}">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta name="color-scheme" content="light dark">
<meta name="referrer" content="no-referrer">
<meta name="description" content="${description}">
<title>${title}</title>
${kept.map((style) => html`<style>${inside(style)}</style>`)}
</head>
<body${bodyClass !== undefined && html` class="${bodyClass}"`}>
${body}
${script !== undefined && html`<script>${inside(script)}</script>`}
</body>
</html>
`.text;
}

/** Text of a style or script element, which ends at the first `</`. */
function inside(text: string): Html {
  if (/<\/|<!--/.test(text)) throw new Error('A style or script holds what would end its element.');
  return new Html(text);
}

const hashes = new Map<string, string>();

function hashOf(text: string): string {
  const known = hashes.get(text);
  if (known !== undefined) return known;
  const hash = policyHash(text);
  // Styles of single pages are not worth keeping.
  if (text.length > 4096) hashes.set(text, hash);
  return hash;
}

/** A text as a string of a style sheet: whatever could end it is written by its number. */
export function cssString(text: string): string {
  return `"${text.replace(/[^A-Za-z0-9 .,:·-]/gu, (char) => `\\${char.codePointAt(0)!.toString(16)} `)}"`;
}
