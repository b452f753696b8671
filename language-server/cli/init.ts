/**
 * `dowel init`: a first machine, a first procedure, a configuration and an example for a CI service, all of which check
 * clean. Never writes over anything: where one of the files is there already, nothing is written at all.
 */
import { existsSync, mkdirSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { CI_EXAMPLES, type CiService, FIRST_FILES } from './first-files.ts';
import { complain, type ExitCode, print } from './output.ts';
import { writeText } from './replace.ts';

export interface InitOptions {
  ci: CiService;
}

export function init(folder: string, { ci }: InitOptions): ExitCode {
  const files = [...FIRST_FILES, CI_EXAMPLES[ci]];
  const there = files.filter(({ path }) => existsSync(join(folder, path)));
  if (there.length > 0) {
    const names = there.map(({ path }) => join(folder, path)).join(', ');
    complain(
      `${names} ${there.length === 1 ? 'is' : 'are'} there already; nothing was written. Name another folder.`,
    );
    return 2;
  }
  for (const { path, text, runs } of files) {
    const target = join(folder, path);
    try {
      mkdirSync(dirname(target), { recursive: true });
    } catch (error) {
      complain(
        `cannot make the folder ${dirname(target)}: ${(error as Error).message}. Name another folder.`,
      );
      return 2;
    }
    const failure = writeText(target, text, runs ? { made: 0o777 } : {});
    if (failure) {
      complain(`cannot write ${target}: ${failure.reason}. ${failure.remedy}`);
      return 2;
    }
    print(`wrote ${target}`);
  }
  print(`\nNext: dowel check ${folder}`);
  return 0;
}
