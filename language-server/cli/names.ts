/**
 * One name for each file, however its path was typed, so that a file reached twice is one file: relative to
 * the working folder where it lies inside it, else as typed; with `/` on every system.
 */
import { dirname, isAbsolute, relative, resolve, sep } from 'node:path';

export interface Names {
  /** The name of a path as typed or as found in a folder. */
  of(path: string): string;
  /** The name of the file that `use "target"` means in the file named `from`. */
  beside(from: string, target: string): string;
}

/** A relative path that says nothing twice: no `.`, no `..`, no empty piece, nothing that another system reads otherwise. */
const PLAIN = /^[\w-]+(?:[.][\w-]+)*(?:\/[\w-]+(?:[.][\w-]+)*)*$/;

export function namesIn(workingFolder: string): Names {
  const names = new Map<string, string>();
  const folders = new Map<string, string>();
  const of = (path: string): string => {
    // What a walk finds is written so already.
    if (PLAIN.test(path)) return path;
    // Files of one folder have its name before their own.
    const own = path.lastIndexOf('/') + 1;
    if (own > 1 && PLAIN.test(path.slice(own))) {
      const typed = path.slice(0, own - 1);
      const folder = folders.get(typed) ?? whole(typed);
      folders.set(typed, folder);
      return folder === '.'
        ? path.slice(own)
        : `${folder}${folder.endsWith('/') ? '' : '/'}${path.slice(own)}`;
    }
    return whole(path);
  };
  const whole = (path: string): string => {
    const absolute = resolve(workingFolder, path);
    const known = names.get(absolute);
    if (known !== undefined) return known;
    const within = relative(workingFolder, absolute);
    const inside = !within.startsWith('..') && !isAbsolute(within);
    const name = inside || !isAbsolute(path) ? within || '.' : absolute;
    const written = sep === '/' ? name : name.split(sep).join('/');
    names.set(absolute, written);
    return written;
  };
  return { of, beside: (from, target) => of(isAbsolute(target) ? target : `${dirname(from)}/${target}`) };
}
