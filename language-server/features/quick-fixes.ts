/**
 * What an author may do about one finding with one click, beside the mends that are searched for: take the
 * declared value, list the tool, write the notice, name the unit, hold the finding back with a reason. Every
 * fix was tried: the finding is gone after it, and nothing else is wrong.
 */

import type { Finding, Mend } from '../report/finding.ts';
import { counts } from './mend-search.ts';
import { type Candidate, candidatesFor } from './quick-fix-candidates.ts';
import { statementAt } from './statement-at.ts';
import { Trial } from './trial.ts';
import type { View } from './view.ts';
import { type Edit, spliced } from './write-out-edits.ts';

/** So many texts are tried for one finding. */
const MOST_TRIED = 12;
const OFFERED = 4;

/** Fixes for one finding of a file, best first. */
export function quickFixes(
  view: View,
  path: string,
  finding: Finding,
  trial = new Trial(view.host, path),
): Mend[] {
  const file = view.file(path);
  if (!file) return [];
  const fixes: Mend[] = [];
  for (const candidate of candidatesFor(view, file, finding).slice(0, MOST_TRIED)) {
    if (fixes.length >= OFFERED) break;
    if (helps(trial, file.text, finding, candidate.edits)) fixes.push(mendOf(path, candidate));
  }
  return fixes;
}

/** `allow` before the step, with a reason that the author fills in; undefined where that holds nothing back. */
export function waiver(
  view: View,
  path: string,
  finding: Finding,
  trial = new Trial(view.host, path),
): Mend | undefined {
  const file = view.file(path);
  const statement = file && statementAt(file.parsed.tree, finding);
  if (!file || !statement) return undefined;
  const line = file.text.lastIndexOf('\n', statement.start - 1) + 1;
  const indent = /^[ \t]*/.exec(file.text.slice(line, statement.start))![0];
  const begins = file.text.slice(line, statement.start).trim() === '';
  const text = `${begins ? '' : '\n'}allow ${finding.check} because "${REASON}"\n${indent}`;
  const candidate: Candidate = {
    title: `Hold \`${finding.check}\` back here, with a reason`,
    edits: [{ start: statement.start, end: statement.start, text }],
  };
  return helps(trial, file.text, finding, candidate.edits) ? mendOf(path, candidate) : undefined;
}

/** Stands in the text until the author says it. */
export const REASON = 'Say why it is right here.';

/** All findings, or those of one check, whose mend is certain, mended together. */
export function fixAll(
  view: View,
  path: string,
  findings: readonly Finding[],
  check?: string,
): Mend | undefined {
  const file = view.file(path);
  if (!file) return undefined;
  const edits: Edit[] = [];
  let count = 0;
  for (const finding of findings) {
    const mend = finding.mends?.[0];
    if (!mend || (check !== undefined && finding.check !== check) || finding.file !== path) continue;
    // Two corrections that could have been meant: the author chooses.
    if (finding.mends!.length > 1 || mend.edits.some((edit) => edit.file !== path)) continue;
    if (mend.edits.some((one) => edits.some((other) => one.start < other.end && other.start < one.end)))
      continue;
    edits.push(...mend.edits);
    count++;
  }
  if (count === 0) return undefined;
  const title =
    check === undefined ? `Mend all ${count} that are certain` : `Mend all ${count} of \`${check}\``;
  return mendOf(path, { title, edits });
}

/** The finding is gone, and nothing is wrong that was not before. */
function helps(trial: Trial, text: string, finding: Finding, edits: readonly Edit[]): boolean {
  const before = trial.findings(text);
  const after = trial.findings(spliced(text, { start: 0, end: text.length }, edits));
  const kinds = (all: readonly Finding[]) => {
    const found = new Map<string, number>();
    // Hints may come: what was hidden behind a fault is seen once it is gone.
    for (const { check, message } of all.filter((one) => counts(one) || one.check === finding.check))
      found.set(`${check} ${message}`, (found.get(`${check} ${message}`) ?? 0) + 1);
    return found;
  };
  const [was, is] = [kinds(before), kinds(after)];
  const key = `${finding.check} ${finding.message}`;
  if ((is.get(key) ?? 0) >= (was.get(key) ?? 0)) return false;
  return [...is].every(([one, count]) => count <= (was.get(one) ?? 0));
}

function mendOf(path: string, { title, edits }: Candidate): Mend {
  return { title, edits: edits.map((edit) => ({ file: path, ...edit })) };
}
