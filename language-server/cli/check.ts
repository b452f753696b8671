/**
 * `dowel check`: reads the files, has them checked, prints the report. Writes nothing to the disk; with
 * `--mend=write` that is the work of ./mend.ts.
 */
import { checkProject } from '../checks/check-project.ts';
import { type Finding, inReadingOrder, SEVERITIES, type Severity } from '../report/finding.ts';
import { lineStore } from '../report/frame.ts';
import { jsonReport } from '../report/json.ts';
import { summaryText } from '../report/summary.ts';
import { findingText, type Painter } from '../report/text.ts';
import { type Disk, disk } from './disk.ts';
import { tooLargeFinding } from './file-too-large.ts';
import type { MendHow } from './mend.ts';
import { namesIn } from './names.ts';
import { complain, type ExitCode, isTerminal, print } from './output.ts';
import { filesOf, type Refused } from './walk.ts';

export interface CheckOptions {
  format: 'text' | 'json';
  /** The mildest severity that makes the exit code 1. */
  severity: Severity;
  /** Show or write what mends the findings; in JSON they are listed with the findings. */
  mend?: MendHow;
  /** Undefined: colour where a person sees it and has not asked for none. */
  color?: boolean;
}

export interface Checked {
  findings: Finding[];
  /** How many files were read and checked. */
  files: number;
  refused: Refused[];
  disk: Disk;
}

/** Checks the files that the paths mean; prints nothing. */
export function checkPaths(paths: readonly string[]): Checked {
  const names = namesIn(process.cwd());
  const { files, refused } = filesOf(paths, names);
  const texts = disk(names);
  const readable = files.filter((file) => texts.read(file) !== undefined);
  // What a file uses and cannot have is a finding where it is used, not a file that was named in vain.
  refused.push(...texts.refused);
  const tooLarge = [...texts.tooLarge].map(([file, size]) => tooLargeFinding(file, size));
  const result = checkProject(texts, readable);
  return {
    findings: inReadingOrder([...result.findings, ...tooLarge]),
    files: result.files,
    refused,
    disk: texts,
  };
}

export async function check(paths: readonly string[], options: CheckOptions): Promise<ExitCode> {
  if (options.mend === 'write' && options.format === 'json') {
    complain('--mend=write has no report in JSON. Leave out --format json, or ask for --mend only.');
    return 2;
  }
  if (options.mend && options.format !== 'json')
    return (await import('./mend.ts')).mend(paths, options.mend, options.severity);
  const checked = checkPaths(paths);
  const lines = lineStore((file) => checked.disk.read(file));
  const { files, refused } = checked;
  const findings = options.mend ? await withMends(checked) : checked.findings;
  if (options.format === 'json') {
    const unread = refused.map(({ path, reason }) => ({ file: path, reason }));
    print(JSON.stringify(jsonReport({ findings, files, unread, lines }), null, 2));
  } else if (files > 0 || findings.length > 0) {
    const paint = await painter(options.color);
    for (const finding of findings) print(`${findingText(finding, { lines, paint })}\n`);
    print(summaryText(findings, files));
  }
  for (const { path, reason, remedy } of refused) complain(`cannot check ${path}: ${reason}. ${remedy}`);
  if (refused.length > 0) return 2;
  const limit = SEVERITIES.indexOf(options.severity);
  return findings.some((finding) => SEVERITIES.indexOf(finding.severity) <= limit) ? 1 : 0;
}

async function withMends({ findings, disk: texts }: Checked): Promise<Finding[]> {
  const { mendsFor } = await import('../features/mend.ts');
  return findings.map((finding) => {
    const mends = mendsFor(texts, finding.file, finding);
    return mends.length > 0 ? { ...finding, mends } : finding;
  });
}

/** The painter to use, or undefined for plain text. NO_COLOR as in the convention of that name. */
export async function painter(wanted: boolean | undefined): Promise<Painter | undefined> {
  const unasked = () => !process.env.NO_COLOR && process.env.TERM !== 'dumb' && isTerminal();
  if (!(wanted ?? unasked())) return undefined;
  return (await import('../report/colour.ts')).inColour;
}
