/** Elements of XML as text, indented, with everything escaped. */
import { escapeText } from '../drawings/svg.ts';

export interface Xml {
  readonly name: string;
  readonly attributes: Readonly<Record<string, string | undefined>>;
  readonly children: readonly (Xml | string)[];
}

/** One element; text children are escaped when written. */
export function el(
  name: string,
  attributes: Readonly<Record<string, string | undefined>> = {},
  ...children: readonly (Xml | string | undefined | readonly (Xml | string)[])[]
): Xml {
  return { name, attributes, children: children.flat().filter((one) => one !== undefined) };
}

/** Elements with text in them stand on one line, so that no blank is added to the text. */
export function write({ name, attributes, children }: Xml, indent = ''): string {
  const typed = Object.entries(attributes)
    .filter(([, value]) => value !== undefined)
    .map(([key, value]) => ` ${key}="${escapeText(value!)}"`)
    .join('');
  if (children.length === 0) return `${indent}<${name}${typed}/>`;
  if (children.some((one) => typeof one === 'string')) {
    const inner = children.map((one) => (typeof one === 'string' ? escapeText(one) : write(one))).join('');
    return `${indent}<${name}${typed}>${inner}</${name}>`;
  }
  const inner = (children as readonly Xml[]).map((one) => write(one, `${indent}  `)).join('\n');
  return `${indent}<${name}${typed}>\n${inner}\n${indent}</${name}>`;
}

/** A whole file. */
export function fileOf(root: Xml, publicId: string, system: string): string {
  return `<?xml version="1.0" encoding="UTF-8"?>\n<!DOCTYPE ${root.name} PUBLIC "${publicId}" "${system}">\n${write(root)}\n`;
}

/** An id as XML allows it (NCName): letters, digits, `-`, `_`, `.`; no digit first. */
export function idOf(text: string): string {
  const kept = text.replace(/[^\p{L}\p{N}._-]/gu, '-');
  return /^[\p{L}_]/u.test(kept) ? kept : `s-${kept}`;
}
