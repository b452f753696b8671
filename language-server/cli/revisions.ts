/**
 * The files of a state of the project: a file, a folder, or a revision of git. Of a revision, what stands in it at or
 * below the working folder, read through git itself; nothing is checked out.
 */
import { execFileSync } from 'node:child_process';
import { statSync } from 'node:fs';
import { posix, relative, sep } from 'node:path';
import type { State } from '../compare/compare.ts';
import { disk } from './disk.ts';
import { namesIn } from './names.ts';
import { SIZE_LIMIT } from './read.ts';
import type { Failure } from './replace.ts';
import { EXTENSION, filesOf } from './walk.ts';

/** What an argument means; `only` narrows a revision to paths in it. */
export function stateOf(argument: string, only: readonly string[]): State | Failure {
  const stat = statSync(argument, { throwIfNoEntry: false });
  if (stat) return onDisk(argument, stat.isDirectory());
  const revision = git([
    'rev-parse',
    '--verify',
    '--quiet',
    '--end-of-options',
    `${argument}^{commit}`,
  ])?.trim();
  if (revision) return inRevision(argument, revision, only);
  return {
    reason: 'it is no file, no folder and no revision of git',
    remedy: 'Name what is there: a path, or a revision as git knows it (a branch, a tag, HEAD~1).',
  };
}

function onDisk(path: string, folder: boolean): State | Failure {
  const names = namesIn(process.cwd());
  const { files, refused } = filesOf([path], names);
  if (refused[0]) return refused[0];
  const host = disk(names);
  for (const file of files) host.read(file);
  if (host.refused[0])
    return { ...host.refused[0], reason: `${host.refused[0].path}: ${host.refused[0].reason}` };
  const base = names.of(path);
  const nameOf = (file: string) => (folder ? posix.relative(base, file) : 'the file');
  return { host, paths: files, nameOf: base === '.' ? (file) => file : nameOf };
}

function inRevision(argument: string, revision: string, only: readonly string[]): State | Failure {
  // Paths come relative to the working folder, as they do from the disk.
  const wanted = only.length > 0 ? only.map((path) => relative(process.cwd(), path) || '.') : ['.'];
  const listed = git(['ls-tree', '-r', '-z', '--name-only', revision, '--', ...wanted.map(slashed)]);
  if (listed === undefined)
    return {
      reason: `git cannot list the files of ${argument}`,
      remedy: 'Run it in a folder of the repository.',
    };
  const paths = listed.split('\0').filter((path) => path.endsWith(EXTENSION));
  if (paths.length === 0)
    return {
      reason: `no file of ${argument} here ends in ${EXTENSION}`,
      remedy: 'Run it in the folder that holds the procedures.',
    };
  const texts = new Map<string, string | undefined>();
  const read = (path: string) => {
    if (!texts.has(path)) texts.set(path, git(['cat-file', 'blob', `${revision}:./${path}`]));
    return texts.get(path);
  };
  const resolve = (from: string, target: string) => posix.normalize(`${posix.dirname(from)}/${target}`);
  return { host: { read, resolve }, paths: paths.sort() };
}

function slashed(path: string): string {
  return path.split(sep).join('/');
}

/** What git answers, or undefined where it refuses or is not there. */
function git(args: readonly string[]): string | undefined {
  try {
    return execFileSync('git', args, {
      encoding: 'utf8',
      maxBuffer: SIZE_LIMIT,
      stdio: ['ignore', 'pipe', 'ignore'],
    });
  } catch {
    return undefined;
  }
}
