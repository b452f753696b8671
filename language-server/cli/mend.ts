/**
 * `dowel check --mend`: shows what would mend the findings, as a patch; with `--mend=write` mends the files.
 * Only what the checker finds clean is shown or written. A file is replaced in one go, or not at all.
 */
import { type MendedFile, mendFile } from '../features/mend.ts';
import { hunksBetween } from '../features/mend-lines.ts';
import { DEFERENCE } from '../report/deference.ts';
import { SEVERITIES, type Severity } from '../report/finding.ts';
import { linesOf } from '../report/positions.ts';
import { printable } from '../report/width.ts';
import { disk } from './disk.ts';
import { type HouseOptions, housesOf } from './houses.ts';
import { namesIn } from './names.ts';
import { complain, type ExitCode, print } from './output.ts';
import { replaceText } from './replace.ts';
import { filesOf } from './walk.ts';

export type MendHow = 'show' | 'write';

/** Exit code 1 where findings at or above the severity are in the files afterwards. */
export async function mend(
  paths: readonly string[],
  how: MendHow,
  severity: Severity,
  options: HouseOptions = {},
): Promise<ExitCode> {
  const names = namesIn(process.cwd());
  const { files, refused } = filesOf(paths, names);
  const texts = disk(names);
  const houses = await housesOf(files, texts, names, options);
  texts.houseOf = houses.of;
  const named = new Set(paths.map((path) => names.of(path)));
  const limit = SEVERITIES.indexOf(severity);
  let found = false;
  let told = false;
  for (const file of files) {
    const text = texts.read(file);
    if (text === undefined || (!named.has(file) && houses.ignores(file))) continue;
    const result = mendFile(texts, file);
    const open =
      how === 'show' ? [...result.mended.map(({ finding }) => finding), ...result.left] : result.left;
    if (open.some((finding) => SEVERITIES.indexOf(finding.severity) <= limit)) found = true;
    if (result.mended.length + result.left.length === 0) continue;
    const said = reportOf(file, text, result, how);
    if (how === 'write' && result.text !== text) {
      const failure = replaceText(file, text, result.text);
      if (failure) {
        refused.push({ path: file, ...failure });
        continue;
      }
    }
    print(said);
    told = true;
  }
  if (told) print(DEFERENCE);
  refused.push(...texts.refused);
  for (const [path] of texts.tooLarge)
    refused.push({
      path,
      reason: 'it is too large',
      remedy: 'Split it into procedures that use one another.',
    });
  for (const { path, reason, remedy } of refused) complain(`cannot mend ${path}: ${reason}. ${remedy}`);
  if (refused.length > 0) return 2;
  return found ? 1 : 0;
}

/** What was or would be done to a file, and in words what is left. */
export function reportOf(
  file: string,
  text: string,
  { mended, left, text: after }: MendedFile,
  how: MendHow,
): string {
  const done = mended.map(
    ({ finding, title }) => `${printable(file)}: ${finding.check}: ${printable(title)}.`,
  );
  const lines = linesOf(after);
  const open = left.map(
    ({ check, message, start }) =>
      `${printable(file)}${how === 'write' ? `:${lines.at(start).line + 1}` : ''}: ${check} is left: ${printable(message)}`,
  );
  const patch = how === 'show' && after !== text ? [patchOf(file, text, after)] : [];
  return [...done, ...patch, ...open].join('\n');
}

/** Lines around a change in a patch. */
const AROUND = 3;

/** The difference in the unified form of POSIX `diff -u`, without times. */
export function patchOf(file: string, before: string, after: string): string {
  const a = ended(before).split('\n');
  const result = [`--- ${file}`, `+++ ${file}`];
  const hunks = hunksBetween(ended(before), ended(after));
  for (let index = 0; index < hunks.length; ) {
    const first = hunks[index]!;
    const start = Math.max(0, first.from - AROUND);
    const body: string[] = [];
    let at = start;
    let added = 0;
    let removed = 0;
    let hunk: typeof first | undefined = first;
    while (hunk) {
      while (at < hunk.from) body.push(` ${a[at++]!}`);
      body.push(...hunk.removed.map((line) => `-${line}`), ...hunk.added.map((line) => `+${line}`));
      at += hunk.removed.length;
      removed += hunk.removed.length;
      added += hunk.added.length;
      const next: typeof first | undefined = hunks[++index];
      hunk = next && next.from - at <= 2 * AROUND ? next : undefined;
    }
    const end = Math.min(a.length, at + AROUND);
    while (at < end) body.push(` ${a[at++]!}`);
    const common = body.length - added - removed;
    const from = span(start, common + removed);
    const to = span(start + first.to - first.from, common + added);
    result.push(`@@ -${from} +${to} @@`, ...body);
  }
  return result.join('\n').replaceAll(UNENDED, '\n\\ No newline at end of file');
}

/** No text of a procedure holds it. */
const UNENDED = '\u0000';

/** Without the end of the last line, which is marked where it has none. */
function ended(text: string): string {
  return text.endsWith('\n') ? text.slice(0, -1) : `${text}${UNENDED}`;
}

/** A range of lines: counted from 1, the line before where there is none. */
function span(start: number, count: number): string {
  return count === 1 ? `${start + 1}` : `${count === 0 ? start : start + 1},${count}`;
}
