/** `dowel format`: lays files out in the one layout there is, or says which ones are not laid out so. */
import { formatText } from '../../grammar/format/format.ts';
import { disk } from './disk.ts';
import { namesIn } from './names.ts';
import { complain, type ExitCode, print } from './output.ts';
import { SIZE_LIMIT } from './read.ts';
import { replaceText } from './replace.ts';
import { filesOf } from './walk.ts';

export interface FormatOptions {
  /** Change nothing; exit code 1 where a file would change. */
  check: boolean;
}

export function format(paths: readonly string[], options: FormatOptions): ExitCode {
  const names = namesIn(process.cwd());
  const { files, refused } = filesOf(paths, names);
  const texts = disk(names);
  let changed = 0;
  for (const file of files) {
    const text = texts.read(file);
    if (text === undefined) continue;
    const laidOut = formatText(text);
    if (laidOut === text) continue;
    changed++;
    if (options.check) {
      print(`${file} is not laid out`);
      continue;
    }
    const failure = replaceText(file, text, laidOut);
    if (failure) refused.push({ path: file, ...failure });
    else print(`${file} laid out`);
  }
  for (const path of texts.tooLarge.keys())
    refused.push({
      path,
      reason: `it is larger than ${SIZE_LIMIT / 1024 / 1024} MB`,
      remedy: 'Split it into procedures that use one another.',
    });
  refused.push(...texts.refused);
  for (const { path, reason, remedy } of refused) complain(`cannot lay out ${path}: ${reason}. ${remedy}`);
  if (refused.length > 0) return 2;
  return options.check && changed > 0 ? 1 : 0;
}
