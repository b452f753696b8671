/**
 * What can come at a place of a text: verbs and the things they can act on in the state there, units that
 * fit, clauses of the kind, states, hazards, checks. Only what can come: what is off already is not offered
 * for removal. Pure; works in broken and cut-off text.
 */
import type {
  Action,
  Block,
  Clause,
  Declaration,
  Machine,
  Procedure,
  Statement,
} from '../../grammar/syntax/tree.ts';
import { namesFor } from './complete-names.ts';
import { around, insideOf, justBefore, type Spot, spotAt } from './complete-spot.ts';
import { unitsFor } from './complete-units.ts';
import {
  afterAction,
  clauseWords,
  fileWords,
  headerWords,
  machineWords,
  planWords,
  ruleWords,
  statementWords,
  tableWords,
} from './complete-words.ts';
import type { View } from './view.ts';

export type ProposalKind =
  | 'verb'
  | 'word'
  | 'thing'
  | 'value'
  | 'name'
  | 'state'
  | 'hazard'
  | 'unit'
  | 'check'
  | 'file'
  | 'snippet';

export interface Proposal {
  label: string;
  kind: ProposalKind;
  /** One short line beside the label. */
  detail?: string;
  /** Markdown. */
  documentation?: string;
  /** What is written; the label where it is missing. `‹name›` is a place to fill in, `‹›` where to go on. */
  snippet?: string;
  /** Proposals of a lower rank come first. */
  rank: number;
  /** Something must be done before: the checks that would blame the step. */
  blocked?: readonly string[];
}

export interface Proposals {
  /** What is replaced. */
  start: number;
  end: number;
  proposals: Proposal[];
}

export function completeAt(view: View, path: string, offset: number): Proposals {
  const none = { start: offset, end: offset, proposals: [] };
  const original = view.file(path);
  if (!original) return none;
  const inside = insideOf(original, offset);
  if (inside && 'comment' in inside) return none;
  if (inside) return inText(view, path, offset, inside.text.typed, inside.text.after);
  const spot = spotAt(view, path, offset);
  if (!spot) return none;
  const seen = new Set<string>();
  const proposals = proposalsFor(spot).filter(({ label }) => !seen.has(label) && seen.add(label));
  return { ...spot.word, proposals };
}

/** Inside quotation marks: a value behind an open brace, files behind `use` and `picture`. */
function inText(view: View, path: string, offset: number, typed: string, after: string): Proposals {
  const brace = /\{([\p{L}\p{N}-]*)$/u.exec(typed);
  if (brace) {
    const scene = view.sceneAt(path, offset);
    const start = offset - brace[1]!.length;
    if (!scene) return { start, end: offset, proposals: [] };
    const { model, procedure, file } = scene;
    const local = procedure
      ? view
          .namesOf(procedure, file, model)
          .locals.filter(({ what, at }) => what !== 'task' && at.start < offset)
          .map(({ name, what }) => ({ label: name, detail: what }))
      : [];
    const declared = [...model.values].map(([label, { title }]) => ({ label, detail: title }));
    const proposals = [...local, ...declared].map((one): Proposal => ({ ...one, kind: 'value', rank: 1 }));
    return { start, end: offset, proposals };
  }
  if (after !== 'use') return { start: offset, end: offset, proposals: [] };
  const start = offset - typed.length;
  const proposals = view
    .siblings(path)
    .map((label): Proposal => ({ label, kind: 'file', rank: 1, detail: 'file' }));
  return { start, end: offset, proposals };
}

function proposalsFor(spot: Spot): Proposal[] {
  if (spot.positionOf !== undefined || spot.name?.role === 'position') return namesFor(spot, 'position');
  const last = spot.before[spot.before.length - 1];
  const number = last?.type === 'number' && !spot.begins;
  const units = number ? unitsFor(spot) : [];
  if (spot.name && !spot.name.declares) return [...units, ...namesFor(spot, spot.name.role)];
  // A name of the author's own is being given.
  if (spot.name) return [];
  return [...units, ...wordsFor(spot)];
}

/** Words of the language, where the place holds no name. */
function wordsFor(spot: Spot): Proposal[] {
  const procedure = around(spot, 'procedure') as Procedure | undefined;
  if (procedure) {
    const { body } = procedure;
    if (!body || spot.word.start <= body.start) return headerWords(spot, procedure);
    return inBlock(spot, procedure, body);
  }
  const machine = around(spot, 'machine') as Machine | undefined;
  if (machine) return inMachine(spot, machine.items);
  const shared = inMachine(spot, spot.file.shared, false);
  const item = spot.file.parsed.tree.items.findLast(
    (one) => one.kind !== 'broken' && one.end <= spot.word.start,
  );
  // Behind the headers of a procedure that has no block yet.
  if (item?.kind === 'procedure' && !item.body) return headerWords(spot, item);
  if (!spot.begins) return shared;
  return [...fileWords(), ...shared, ...machineWords()];
}

function inMachine(spot: Spot, items: readonly { kind: string; start: number; end: number }[], own = true) {
  const rule = around(spot, 'rule');
  if (rule && open(spot, rule)) return ruleWords(spot);
  const table = around(spot, 'table');
  if (table && open(spot, table)) return tableWords(spot);
  const clause = spot.trail.find((node) => 'clause' in node) as Clause | undefined;
  if (clause?.clause === 'plan') return planWords(spot);
  const declaration = (around(spot, 'declaration') ??
    items.findLast(
      ({ kind, end, start }) => kind !== 'broken' && start < spot.word.start && end <= spot.word.start,
    )) as Declaration | undefined;
  const clauses =
    declaration?.kind === 'declaration' && declaration.name ? clauseWords(spot, declaration) : [];
  return spot.begins && own ? [...clauses, ...machineWords()] : clauses;
}

/** The place lies between the braces of a node. */
function open(spot: Spot, node: { start: number }): boolean {
  const brace = spot.text.indexOf('{', node.start);
  return brace >= 0 && brace < spot.word.start;
}

function inBlock(spot: Spot, procedure: Procedure, body: Block): Proposal[] {
  const action = around(spot, 'action') as Action | undefined;
  const block = innermost(spot, body);
  if (spot.begins) {
    const outcomes =
      action && action.outcomes.length > 0 && !action.outcomes.some((one) => inside(spot, one.body));
    return statementWords(spot, procedure, outcomes ? action : undefined);
  }
  const before = action ?? justBefore<Statement>(spot, block.statements);
  return before ? afterAction(spot, before) : [];
}

function innermost(spot: Spot, body: Block): Block {
  return (spot.trail.findLast((node) => 'statements' in node) as Block | undefined) ?? body;
}

function inside(spot: Spot, block: Block | undefined): boolean {
  return block !== undefined && block.start < spot.word.start && spot.word.start < block.end;
}
