/**
 * Where a picture may lie: in the folder of the file that names it, or below. Decided from the path alone, so that the
 * checker, the editor and the publisher agree; who reads the disk also has to see that no link leads out.
 */

/** Why a picture of this path is not taken, in words that follow "The picture … "; undefined where it may be taken. */
export function pathFault(path: string): string | undefined {
  if (path.trim() === '') return 'has no path';
  // biome-ignore lint/suspicious/noControlCharactersInRegex: control characters are what is looked for
  if (/[\u0000-\u001f\u007f]/.test(path)) return 'has a control character in its path';
  // A drive letter looks like a scheme, and neither is taken.
  if (/^[a-z]:/i.test(path)) return 'is named from the top of a disk';
  if (/^[a-z][a-z0-9+.-]*:/i.test(path)) return 'is an address, not a file of this folder';
  if (/^[/\\]{2}/.test(path)) return 'lies on another computer';
  if (/^[/\\~]/.test(path)) return 'is named from the top of a disk';
  if (path.includes('\\')) return 'is written with backslashes';
  if (path.split('/').includes('..')) return 'lies outside the folder of this file';
  return undefined;
}

/** The path without `.` and empty pieces: one name for one picture. */
export function plainPath(path: string): string {
  return path
    .split('/')
    .filter((piece) => piece !== '.' && piece !== '')
    .join('/');
}
