/**
 * Finds what mends a finding by trying: every change is made, the file is checked again, and a change is kept
 * only where the finding is gone and no error or warning is new. Where a change brings follow-on findings (a
 * part put back whose seal is missing) they are mended in turn, a few steps deep. Bounded by a number of trials.
 */
import type { Edit } from '../../grammar/format/format.ts';
import type { Finding } from '../report/finding.ts';
import { changesFor } from './mend-candidates.ts';
import { contextOf } from './mend-context.ts';
import { edited } from './mend-edits.ts';
import { outlineOf } from './mend-outline.ts';
import type { Trial, Tried } from './trial.ts';

export interface Mended {
  text: string;
  /** Said by the check itself, where it knows the mend. */
  title?: string;
  /** Errors and warnings that are left with it. */
  left: number;
}

export interface Search {
  /** So many texts are tried for one finding. */
  limit: number;
  /** Stop once so many mends are known. */
  most: number;
}

/** Share of the trials that goes to single changes; the rest is for changes that need others after them. */
const SINGLE = 0.5;
/** Follow-on findings that a change may bring and still be worth going on with. */
const MOST_NEW = 4;
/** How many changes one mend may be made of. */
const DEPTH = 8;
/** Changes tried after one change; so many at once, and what each further one weighs against a follow-on finding. */
const FOLLOWING = 12;
const AT_ONCE = 5;
const PER_TRIAL = 0.25;
/** Trials after the first mend in which a better one is looked for, where findings are left. */
const PATIENCE = 10;

interface Started {
  tried: Tried;
  fresh: Finding[];
}

/** A text with follow-on findings, and the changes that may mend the first of them. */
interface Branch extends Started {
  depth: number;
  next: Iterator<Edit[]> | undefined;
  trials: number;
}

/** What mends the finding, best first: what leaves fewest findings, then what is most natural. */
export function search(trial: Trial, base: Tried, finding: Finding, options: Search): Mended[] {
  const start = trial.tries;
  const spent = () => trial.tries - start;
  const goal = counted(base.findings);
  const key = keyOf(finding);
  const gone = (goal.get(key) ?? 0) - 1;
  const found: Mended[] = [];
  const seen = new Set([base.text]);
  let patience = PATIENCE;
  const enough = () => {
    if (found.length === 0) return false;
    return found.length >= options.most || found.some(({ left }) => left === 0) || patience <= 0;
  };
  const attempt = (text: string, title?: string): Started | undefined => {
    if (seen.has(text)) return undefined;
    seen.add(text);
    if (found.length > 0) patience--;
    const tried = trial.check(text);
    const now = counted(tried.findings);
    if ((now.get(key) ?? 0) > gone) return undefined;
    const fresh = freshIn(tried.findings, goal);
    if (fresh.length > 0) return { tried, fresh };
    found.push({ text, left: tried.findings.filter(counts).length, ...(title ? { title } : {}) });
    return undefined;
  };

  const branches: Branch[] = [];
  const goOn = (started: Started | undefined, depth: number) => {
    if (started && started.fresh.length <= MOST_NEW)
      branches.push({ ...started, depth, next: undefined, trials: 0 });
  };
  for (const { title, edits } of certain(finding, trial.path)) attempt(edited(base.text, edits), title);
  for (const edits of changes(trial, base, finding)) {
    if (enough() || spent() >= options.limit * SINGLE) break;
    goOn(attempt(edited(base.text, edits)), 1);
  }
  while (found.length === 0 && spent() < options.limit) {
    const branch = nearest(branches);
    if (!branch) break;
    branch.next ??= changes(trial, branch.tried, branch.fresh[0]!);
    const change = branch.next.next();
    branch.trials++;
    if (change.done) branch.trials = FOLLOWING;
    else goOn(attempt(edited(branch.tried.text, change.value)), branch.depth + 1);
  }
  return found.sort((a, b) => a.left - b.left);
}

/** Findings that a mend must not bring. */
export function counts({ severity }: Finding): boolean {
  return severity === 'error' || severity === 'warning';
}

/** What makes a finding the same one in a changed text, in which it may stand elsewhere. */
export function keyOf({ check, message }: Finding): string {
  return `${check} ${message}`;
}

/** The branch that has fewest findings to mend and was not tried much yet. */
function nearest(branches: readonly Branch[]): Branch | undefined {
  const cost = ({ fresh, trials }: Branch) => fresh.length + Math.max(0, trials - AT_ONCE) * PER_TRIAL;
  let best: Branch | undefined;
  for (const branch of branches) {
    if (branch.depth >= DEPTH || branch.trials >= FOLLOWING) continue;
    if (!best || cost(branch) < cost(best)) best = branch;
  }
  return best;
}

function counted(findings: readonly Finding[]): Map<string, number> {
  const result = new Map<string, number>();
  for (const finding of findings) {
    if (!counts(finding)) continue;
    const key = keyOf(finding);
    result.set(key, (result.get(key) ?? 0) + 1);
  }
  return result;
}

/** The findings that are more than there were. */
function freshIn(findings: readonly Finding[], known: ReadonlyMap<string, number>): Finding[] {
  const left = new Map(known);
  return findings.filter((finding) => {
    if (!counts(finding)) return false;
    const key = keyOf(finding);
    const count = left.get(key) ?? 0;
    left.set(key, count - 1);
    return count <= 0;
  });
}

/** The mends that the check itself knows. */
function certain(finding: Finding, path: string): { title: string; edits: Edit[] }[] {
  return (finding.mends ?? [])
    .filter(({ edits }) => edits.every(({ file }) => file === path))
    .map(({ title, edits }) => ({
      title,
      edits: edits.map(({ start, end, text }) => ({ start, end, text })),
    }));
}

/** The changes to a tried text that may mend one of its findings. */
function* changes(trial: Trial, tried: Tried, finding: Finding): Generator<Edit[]> {
  for (const { edits } of certain(finding, trial.path)) yield edits;
  const procedure = tried.file.procedures.find(
    ({ start, end }) => start <= finding.start && finding.end <= end,
  );
  const model = procedure && trial.model(tried, procedure);
  if (!procedure || !model) return;
  const outline = outlineOf(procedure, model);
  const context = contextOf(tried.text, finding, tried.findings, outline, model);
  if (context) yield* changesFor(context);
}
