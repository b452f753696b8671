/** The one finding about a file that is not read: said by the command line, which alone sees sizes. */
import type { Check } from '../checks/check.ts';
import { findingOf } from '../checks/finding-of.ts';
import type { Finding } from '../report/finding.ts';
import { SIZE_LIMIT } from './read.ts';

const megabytes = (bytes: number) => `${Math.round(bytes / 1024 / 1024)} MB`;

/** Its example would be larger than this whole project, so it stands beside the list of checks. */
export const fileTooLarge: Check = {
  name: 'file-too-large',
  group: 'Text',
  severity: 'error',
  title: `A file has more than ${megabytes(SIZE_LIMIT)} and is not read.`,
  explanation: `
A procedure of 20,000 steps takes about one megabyte, so a file of this size is most likely none: a picture, an archive,
or a log with the wrong name. If it is one, split it into procedures that use one another.`,
  source: 'a limit of this tool',
  bad: '',
  good: '',
  says: ({ words = {} }) => ({
    message: `The file has ${words.size}; files above ${megabytes(SIZE_LIMIT)} are not read.`,
    help: 'Split it into procedures that use one another.',
  }),
};

export function tooLargeFinding(file: string, size: number): Finding {
  return findingOf(fileTooLarge, { file, start: 0, end: 0 }, { size: megabytes(size) });
}
