/**
 * Waivers: `allow CHECK because "reason"` holds back the findings of that check at the statement that follows it, or at
 * the end of its block. What is held back is kept, with the reason, for reports and for the printed page.
 */
import type { Allow, Block, Procedure, Span, Statement } from '../../grammar/syntax/tree.ts';
import type { Fact } from '../model/facts.ts';
import { bodiesOf, headOf } from '../model/flow-walk.ts';
import { unknownName } from '../model/names.ts';
import type { Finding, Place } from '../report/finding.ts';
import { checkNamed } from './all.ts';
import { fixedBecause, SETTABLE_CHECKS } from './settable.ts';

/** A finding that was held back. */
export interface Waived {
  finding: Finding;
  reason: string;
  /** Where the waiver stands. */
  at: Place;
}

export interface Sorted {
  findings: Finding[];
  waived: Waived[];
  /** What is wrong with the waivers: `waiver-unused`, `waiver-without-reason`, `waiver-refused`, `unknown-name`. */
  facts: Fact[];
}

interface Waiver {
  readonly allow: Allow;
  /** Where findings are held back. */
  readonly covers: Span;
  readonly atEnd: boolean;
}

/** Parts the findings of a file into those that stand and those that its waivers hold back. */
export function sortOut(
  findings: readonly Finding[],
  procedures: readonly Procedure[],
  file: string,
): Sorted {
  const waivers = procedures.flatMap(waiversOf);
  const facts: Fact[] = [];
  const valid = waivers.filter((waiver) => {
    const fault = faultOf(waiver.allow, file);
    if (fault) facts.push(fault);
    return !fault && waiver.allow.check !== undefined && waiver.allow.reason !== undefined;
  });
  const used = new Set<Waiver>();
  const waived: Waived[] = [];
  const left = findings.filter((finding) => {
    const waiver = valid.find((one) => holdsBack(one, finding, file));
    if (!waiver) return true;
    used.add(waiver);
    const { start, end, reason } = waiver.allow;
    waived.push({ finding, reason: reason!.value.trim(), at: { file, start, end } });
    return false;
  });
  // Where the tool failed, nobody knows what the waiver would have held back.
  if (!findings.some(({ check, file: of }) => check === 'tool-failure' && of === file)) {
    for (const { allow, atEnd } of valid.filter((one) => !used.has(one))) {
      const { start, end, text } = allow.check!;
      facts.push({
        check: 'waiver-unused',
        at: { file, start, end },
        words: { check: text, ...(atEnd ? { end: 'yes' } : {}) },
      });
    }
  }
  return { findings: left, waived, facts };
}

function holdsBack({ allow, covers }: Waiver, finding: Finding, file: string): boolean {
  return (
    finding.check === allow.check!.text &&
    finding.file === file &&
    covers.start <= finding.start &&
    finding.start < covers.end
  );
}

function faultOf({ check, reason }: Allow, file: string): Fact | undefined {
  if (!check) return undefined;
  const { text, start, end } = check;
  const at = { file, start, end };
  if (!checkNamed(text)) return unknownName(file, check, 'check', SETTABLE_CHECKS);
  const because = fixedBecause(text);
  if (because) return { check: 'waiver-refused', at, words: { check: text, because } };
  // A reason has letters or figures; that the text is missing altogether is a fault of the text.
  if (reason && !/[\p{L}\p{N}]/u.test(reason.value))
    return {
      check: 'waiver-without-reason',
      at: { file, start: reason.start, end: reason.end },
      words: { check: text },
    };
  return undefined;
}

/** Kept, since a procedure is asked again each time that another one changed, and a task when another step did. */
const known = new WeakMap<Procedure | Statement, readonly Waiver[]>();

function waiversOf(procedure: Procedure): readonly Waiver[] {
  return kept(procedure, procedure.body ? [procedure.body] : []);
}

function kept(of: Procedure | Statement, bodies: readonly Block[]): readonly Waiver[] {
  let waivers = known.get(of);
  if (!waivers) {
    waivers = bodies.flatMap(waiversIn);
    known.set(of, waivers);
  }
  return waivers;
}

function waiversIn({ statements, end }: Block): Waiver[] {
  const found: Waiver[] = [];
  for (const [index, statement] of statements.entries()) {
    if (statement.kind === 'allow') {
      const next = statements.slice(index + 1).find(({ kind }) => kind !== 'allow' && kind !== 'notice');
      const covers = next ? ownSpan(next) : { start: statement.end, end };
      found.push({ allow: statement, covers, atEnd: next === undefined });
      continue;
    }
    const bodies = bodiesOf(statement);
    if (bodies.length > 0) found.push(...kept(statement, bodies));
  }
  return found;
}

/** The statement without the steps in its blocks; a `step "…" { }` is one with its actions. */
function ownSpan(statement: Statement): Span {
  const { start, end } = statement;
  if (statement.kind === 'action') return headOf(statement);
  if (statement.kind === 'step') return { start, end };
  return { start, end: bodiesOf(statement)[0]?.start ?? end };
}
