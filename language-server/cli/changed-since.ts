/**
 * Which files have changed since a revision of git, and which ones use them: what a reviewer has to look at. A file that
 * git does not know yet counts as changed.
 */
import { execFileSync } from 'node:child_process';
import { checkUses } from '../checks/uses.ts';
import { CONFIG_NAME } from '../config/house.ts';
import type { SourceHost } from '../project/project.ts';
import type { Names } from './names.ts';

/** The files out of `files` that are to be checked, or why git cannot tell. */
export function touchedSince(
  revision: string,
  files: readonly string[],
  host: SourceHost,
  names: Names,
): readonly string[] | { reason: string; remedy: string } {
  const listed = changedSince(revision);
  if (listed === undefined)
    return {
      reason: `git knows no revision ${revision} here`,
      remedy: 'Name a branch, a tag or a commit of the repository that holds the files.',
    };
  // What a house has agreed on touches every file.
  if (listed.some((path) => path.endsWith(CONFIG_NAME))) return files;
  const changed = new Set(listed.map((path) => names.of(path)));
  return files.filter((file) => checkUses(host, file).some((used) => changed.has(used)));
}

function changedSince(revision: string): string[] | undefined {
  const since = git(['diff', '--name-only', '-z', '--relative', '--end-of-options', revision, '--']);
  const unknown = git(['ls-files', '--others', '--exclude-standard', '-z']);
  return since === undefined || unknown === undefined
    ? undefined
    : `${since}${unknown}`.split('\0').filter((path) => path !== '');
}

function git(args: readonly string[]): string | undefined {
  try {
    return execFileSync('git', args, { encoding: 'utf8', stdio: ['ignore', 'pipe', 'ignore'] });
  } catch {
    return undefined;
  }
}
