/**
 * The project's texts as they lie on the disk: what the checker asks for is read once, and what cannot be
 * had is remembered with its reason. Reads only.
 */
import type { SourceHost } from '../project/project.ts';
import type { Names } from './names.ts';
import { readText } from './read.ts';
import type { Refused } from './walk.ts';

export interface Disk extends SourceHost {
  houseOf?: NonNullable<SourceHost['houseOf']>;
  /** Files that were asked for and could not be had, in the order of asking. */
  readonly refused: readonly Refused[];
  /** Files that are too large to be read, with their size in bytes. */
  readonly tooLarge: ReadonlyMap<string, number>;
}

export function disk(names: Names): Disk {
  const texts = new Map<string, string | undefined>();
  const refused: Refused[] = [];
  const tooLarge = new Map<string, number>();
  const load = (path: string): string | undefined => {
    const result = readText(path);
    if ('text' in result) return result.text;
    if ('tooLarge' in result) tooLarge.set(path, result.tooLarge);
    else refused.push({ path, ...result });
    return undefined;
  };
  return {
    refused,
    tooLarge,
    read(path) {
      if (!texts.has(path)) texts.set(path, load(path));
      return texts.get(path);
    },
    resolve: (from, target) => names.beside(from, target),
  };
}
