/**
 * Finds what mends a finding by trying: every change is made, the file is checked again, and a change is kept
 * only where the finding is gone and no error or warning is new. Where a change brings follow-on findings (a
 * part put back whose seal is missing) they are mended in turn, a few steps deep. Bounded by a number of trials.
 */
import type { Edit } from '../../grammar/format/format.ts';
import type { Finding } from '../report/finding.ts';
import { changesFor, contextOf } from './mend-candidates.ts';
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
const SINGLE = 0.6;
/** Follow-on findings that a change may bring and still be worth going on with. */
const MOST_NEW = 4;
/** Changes that are gone on with at each depth, and how deep. */
const BEAM = 4;
const DEPTH = 6;
/** Changes tried for one follow-on finding. */
const FOLLOWING = 8;
/** Trials after the first mend in which a better one is looked for, where findings are left. */
const PATIENCE = 10;

interface Started {
  tried: Tried;
  fresh: Finding[];
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

  let begun: Started[] = [];
  for (const { title, edits } of certain(finding, trial.path)) attempt(edited(base.text, edits), title);
  for (const edits of changes(trial, base, finding)) {
    if (enough() || spent() >= options.limit * SINGLE) break;
    const started = attempt(edited(base.text, edits));
    if (started && started.fresh.length <= MOST_NEW) begun.push(started);
  }
  for (let depth = 1; depth < DEPTH && found.length === 0 && begun.length > 0; depth++) {
    const next: Started[] = [];
    for (const { tried, fresh } of fewestFirst(begun).slice(0, BEAM)) {
      let following = 0;
      for (const edits of changes(trial, tried, fresh[0]!)) {
        if (found.length > 0 || spent() >= options.limit || following >= FOLLOWING) break;
        following++;
        const started = attempt(edited(tried.text, edits));
        if (started && started.fresh.length <= MOST_NEW) next.push(started);
      }
    }
    begun = next;
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

function fewestFirst(list: readonly Started[]): Started[] {
  return [...list].sort((a, b) => a.fresh.length - b.fresh.length);
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
