/**
 * Reads one text from the disk, or says in words why it cannot be had. Never waits on anything that is not
 * a plain file, never reads a file that no procedure could be.
 */
import { isUtf8 } from 'node:buffer';
import { readFileSync, statSync } from 'node:fs';

/** Bytes. A procedure of 20,000 steps takes about 1 MB. */
export const SIZE_LIMIT = 16 * 1024 * 1024;

export type ReadResult =
  | { text: string }
  /** A size in bytes: the file is there and is not read. */
  | { tooLarge: number }
  /** What is wrong, and what to do. */
  | { reason: string; remedy: string };

export function readText(path: string): ReadResult {
  try {
    const stat = statSync(path);
    if (stat.isDirectory()) return { reason: 'it is a folder', remedy: 'Name a file.' };
    if (!stat.isFile()) return { reason: 'it is not a plain file', remedy: 'Name a file.' };
    if (stat.size > SIZE_LIMIT) return { tooLarge: stat.size };
    return decode(readFileSync(path));
  } catch (error) {
    return refusal(error as NodeJS.ErrnoException);
  }
}

/** What a failed call of the file system means to the person who named the path. */
export function refusal(error: NodeJS.ErrnoException): { reason: string; remedy: string } {
  switch (error.code) {
    case 'ENOENT':
    case 'ENOTDIR':
      return { reason: 'no such file or folder', remedy: 'Check how the path is written.' };
    case 'EACCES':
    case 'EPERM':
      return { reason: 'you may not read it', remedy: 'Change its permissions, or have somebody do so.' };
    case 'ELOOP':
      return { reason: 'its symbolic links go round in a circle', remedy: 'Name the file itself.' };
    default:
      return { reason: error.message, remedy: 'Check the file and the disk it is on.' };
  }
}

function decode(bytes: Buffer): ReadResult {
  if ((bytes[0] === 0xff && bytes[1] === 0xfe) || (bytes[0] === 0xfe && bytes[1] === 0xff))
    return { reason: 'it is UTF-16 text, not UTF-8', remedy: 'Save it again with the encoding UTF-8.' };
  if (!isUtf8(bytes))
    return { reason: 'it is not UTF-8 text', remedy: 'Save it again with the encoding UTF-8.' };
  if (bytes.includes(0))
    return { reason: 'it holds zero bytes, so it is not a text', remedy: 'Name a file that ends in .dowel.' };
  // A byte order mark says only that this is UTF-8: it is no part of the text.
  const start = bytes[0] === 0xef && bytes[1] === 0xbb && bytes[2] === 0xbf ? 3 : 0;
  return { text: bytes.toString('utf8', start) };
}
