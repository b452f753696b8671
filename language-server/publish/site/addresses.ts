/**
 * Where each page of the site lies. An address is made of where a procedure is written and of its name, never of
 * numbers or order, so that it stays when another one is added, renamed or taken away.
 */

/** A path inside the published folder, with `/`. What lies outside of it is put under `outside`. */
function inside(path: string): string {
  return path
    .split('/')
    .filter((piece) => piece !== '' && piece !== '.')
    .map((piece) => (piece === '..' ? 'outside' : clean(piece)))
    .join('/');
}

/** A piece that every file system takes: letters, digits and a few marks; the rest is written by its number. */
function clean(piece: string): string {
  const kept = piece.normalize('NFC').replace(/[^\p{Letter}\p{Mark}\p{Number}._-]/gu, (char) => {
    return `~${char.codePointAt(0)!.toString(16)}`;
  });
  // A name that a system keeps for itself, or that hides a file.
  return /^(con|prn|aux|nul|com\d|lpt\d)(\.|$)/i.test(kept) || kept.startsWith('.') ? `_${kept}` : kept;
}

/** Capitals are marked, for there are disks that do not tell them from small letters. */
function marked(name: string): string {
  return clean(name).replace(/\p{Uppercase_Letter}/gu, (letter) => `${letter}~`);
}

/** `tarnbrook/overhaul.dowel` and `overhaul`: `procedures/tarnbrook/overhaul.html`. Names have no dots. */
export function procedureAddress(file: string, name: string): string {
  const path = inside(file).replace(/\.dowel$/, '');
  const base = path.slice(path.lastIndexOf('/') + 1);
  return base === clean(name) && base === marked(name)
    ? `procedures/${path}.html`
    : `procedures/${path}.${marked(name)}.html`;
}

export function machineAddress(file: string, name: string): string {
  const path = inside(file).replace(/\.dowel$/, '');
  const base = path.slice(path.lastIndexOf('/') + 1);
  return base === clean(name) && base === marked(name)
    ? `machines/${path}.html`
    : `machines/${path}.${marked(name)}.html`;
}

export function checkAddress(name: string): string {
  return `checks/${clean(name)}.html`;
}

export const INDEX = 'index.html';
export const CHECKS = 'checks/index.html';
/** Tells a later run that the folder is a site made here, and so may be replaced. */
export const MARKER = '.dowel-site';

/** How many folders below the top of the site an address lies. */
export function depthOf(address: string): number {
  return address.split('/').length - 1;
}
