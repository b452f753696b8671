/** The one finding about findings that are too many to be read: the gravest of a file are kept, the rest is counted. */
import type { Check } from '../checks/check.ts';
import { findingOf } from '../checks/finding-of.ts';
import { type Finding, SEVERITIES, type Severity } from '../report/finding.ts';

/** Of one file. */
export const MOST_FINDINGS = 1000;

/** Its example would be longer than this whole list, so it stands beside the list of checks. */
export const findingsCut: Check = {
  name: 'findings-cut',
  group: 'Text',
  severity: 'warning',
  title: `A file has more than ${MOST_FINDINGS} findings, and not all are listed.`,
  explanation: `
So many findings mostly have one cause: a machine that was renamed, a wrong file that is used. Nobody reads them all, so
the gravest are listed and the others counted. Every file is checked to its end.`,
  source: 'a limit of this tool',
  bad: '',
  good: '',
  says: ({ words = {} }) => ({
    message: `The file has ${words.all} findings; the gravest ${words.most} of them are listed.`,
    help: 'Mend these, most of all those in the machine, then check again.',
  }),
};

/** A finding with its mark by which it is known again. */
export interface Marked {
  finding: Finding;
  mark: string;
}

/** At most so many findings of each file, the gravest, in their order; behind them one that says there are others. */
export function cut(
  all: readonly Marked[],
  markOf: (finding: Finding) => string,
  most = MOST_FINDINGS,
): Marked[] {
  const files = new Map<string, Marked[]>();
  for (const one of all) {
    const of = files.get(one.finding.file);
    if (of) of.push(one);
    else files.set(one.finding.file, [one]);
  }
  return [...files].flatMap(([file, found]) => {
    if (found.length <= most) return found;
    const grave = (severity: Severity) => SEVERITIES.indexOf(severity);
    const gravest = new Set(
      [...found].sort((a, b) => grave(a.finding.severity) - grave(b.finding.severity)).slice(0, most),
    );
    const at = { file, start: found.at(-1)!.finding.end, end: found.at(-1)!.finding.end };
    const finding = findingOf(findingsCut, at, { all: String(found.length), most: String(most) });
    return [...found.filter((one) => gravest.has(one)), { finding, mark: markOf(finding) }];
  });
}
