/** `dowel write-out FILE`: prints the file with every `reverse`, `do` and `for each` written out. Writes no file. */
import { writeOut } from '../features/write-out.ts';
import { disk } from './disk.ts';
import { namesIn } from './names.ts';
import { complain, type ExitCode, print } from './output.ts';
import { SIZE_LIMIT } from './read.ts';

export function writeOutFile(path: string): ExitCode {
  const names = namesIn(process.cwd());
  const file = names.of(path);
  const texts = disk(names);
  const written = writeOut(texts, file);
  if (written === undefined) {
    const { reason, remedy } = texts.refused[0] ?? {
      reason: `it is larger than ${SIZE_LIMIT / 1024 / 1024} MB`,
      remedy: 'Split it into procedures that use one another.',
    };
    complain(`cannot read ${file}: ${reason}. ${remedy}`);
    return 2;
  }
  // The text ends with a line end of its own.
  print(written.replace(/\n$/, ''));
  return 0;
}
