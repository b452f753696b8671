/**
 * A project: the texts that are checked together and how `use` finds them. No disk here: the command line
 * and the editor's server give a `SourceHost`. Results are plain data.
 */
import type { ParsedFile, Written } from '../../grammar/syntax/tree.ts';
import type { Convention, LiftingGuideline } from '../hazards/index.ts';
import type { Severity } from '../report/finding.ts';

/** What the house has agreed on, where it is not the usual. */
export interface House {
  /** What the signal words of notices mean. */
  readonly convention?: Convention;
  /** Against which guideline weights lifted by hand are held. */
  readonly liftingGuideline?: LiftingGuideline;
  /** By the name of the check; `off`: not reported. */
  readonly severities?: Readonly<Record<string, Severity | 'off'>>;
  /** Files whose rules (and shared declarations) hold everywhere, as the host reads them. */
  readonly ruleFiles?: readonly string[];
}

export interface SourceHost {
  /** The text of a file, or undefined where it cannot be had. Paths are as the host writes them. */
  read(path: string): string | undefined;
  /** The path that `use "target"` means in the file `from`. */
  resolve(from: string, target: string): string;
  /** Every file of the project that is known, where the host can tell. */
  list?(): readonly string[];
  /** What the house has agreed on for this file; the same object for the same house. */
  houseOf?(path: string): House | undefined;
}

export interface Source {
  path: string;
  text: string;
  written: Written;
  parsed: ParsedFile;
}

/** A host over texts in memory, with `/`-separated paths: for tests, pages and editors. */
export function memoryHost(files: Readonly<Record<string, string>>): SourceHost {
  return {
    read: (path) => files[path],
    list: () => Object.keys(files),
    resolve(from, target) {
      const parts = from.split('/').slice(0, -1);
      for (const piece of target.split('/')) {
        if (piece === '..') parts.pop();
        else if (piece !== '.' && piece !== '') parts.push(piece);
      }
      return parts.join('/');
    },
  };
}
