/**
 * Writes a file in one go or not at all: into a new file beside it, onto the disk, then into its place. A reader, a
 * second run or a cut in power finds the old text or the new one, never half of one.
 */
import {
  closeSync,
  fsyncSync,
  openSync,
  realpathSync,
  renameSync,
  rmSync,
  statSync,
  writeFileSync,
  writeSync,
} from 'node:fs';
import { basename, dirname, join } from 'node:path';
import { readText, refusal } from './read.ts';

export interface Failure {
  reason: string;
  remedy: string;
}

/** Puts a text in the place of the one that was read before; says why not where it cannot. */
export function replaceText(file: string, before: string, after: string): Failure | undefined {
  return trying(() => {
    const target = realpathSync(file);
    const now = readText(target);
    if (!('text' in now) || now.text !== before)
      return { reason: 'it was changed in the meantime', remedy: 'Run the command again.' };
    put(target, after, statSync(target).mode & 0o777);
    return undefined;
  });
}

/**
 * Writes a file that may be there already, whatever it holds; a link is followed. `made`: the mode of a new file.
 * `lasting: false`: what a cut in power leaves of it need not be whole.
 */
export function writeText(
  file: string,
  text: string,
  { made = 0o666, lasting = true }: { made?: number; lasting?: boolean } = {},
): Failure | undefined {
  return trying(() => {
    const { target, mode, plain } = standing(file, made);
    if (plain) put(target, text, mode, lasting);
    // A device or a pipe takes what is written to it; it must not be put aside for a file.
    else writeFileSync(target, text);
    return undefined;
  });
}

function standing(file: string, made: number): { target: string; mode: number; plain: boolean } {
  const stat = statSync(file, { throwIfNoEntry: false });
  if (!stat) return { target: file, mode: made, plain: true };
  if (!stat.isFile() && !stat.isDirectory()) return { target: file, mode: made, plain: false };
  return { target: realpathSync(file), mode: stat.mode & 0o777, plain: true };
}

function put(target: string, text: string, mode: number, lasting = true): void {
  const own = join(dirname(target), `.${basename(target)}.${process.pid}.new`);
  // Opened before anything else is tried: where this fails, the file is not ours to remove.
  const descriptor = openSync(own, 'wx', mode);
  try {
    try {
      const bytes = Buffer.from(text);
      for (let at = 0; at < bytes.length; ) at += writeSync(descriptor, bytes, at);
      if (lasting) fsyncSync(descriptor);
    } finally {
      closeSync(descriptor);
    }
    renameSync(own, target);
  } catch (error) {
    rmSync(own, { force: true });
    throw error;
  }
}

function trying(work: () => Failure | undefined): Failure | undefined {
  try {
    return work();
  } catch (error) {
    return refusedWriting(error as NodeJS.ErrnoException);
  }
}

/** What a failed call means to the person who asked for a file to be written. */
export function refusedWriting(error: NodeJS.ErrnoException): Failure {
  switch (error.code) {
    case 'ENOENT':
    case 'ENOTDIR':
      return { reason: 'its folder is not there', remedy: 'Make the folder first, or name another.' };
    case 'EISDIR':
      return { reason: 'it is a folder', remedy: 'Name a file.' };
    case 'EACCES':
    case 'EPERM':
      return {
        reason: 'you may not write there',
        remedy: 'Change the permissions, or name another place.',
      };
    case 'EROFS':
      return { reason: 'the disk can only be read', remedy: 'Name a place on another disk.' };
    case 'ENOSPC':
    case 'EDQUOT':
      return { reason: 'the disk is full', remedy: 'Make room, then run the command again.' };
    case 'EEXIST':
      return {
        reason: 'a half-written file of a run that was cut off lies beside it',
        remedy: 'Remove the file that begins with a dot and ends in .new, then run the command again.',
      };
    default:
      return refusal(error);
  }
}
