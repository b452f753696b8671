/** Units that fit behind a number: of the kinds that its clause, header, verb or tail takes; usual ones first. */
import { allSpellings, type KindName, units } from '../../grammar/quantity/index.ts';
import type { Action, Clause, Header, Stage, Tail } from '../../grammar/syntax/tree.ts';
import {
  CLAUSE_KINDS,
  STAGE_KINDS,
  SUPPLY_KINDS,
  TAIL_KINDS,
  TIME_HEADER_KINDS,
  TO_KINDS,
  VERB_KINDS,
  type Wanted,
} from '../model/quantity-kinds.ts';
import type { Proposal } from './complete.ts';
import type { Spot } from './complete-spot.ts';

/** Units that a technician reaches for first (common practice, no source). */
const USUAL = [
  'N·m',
  'lbf·ft',
  '°',
  'turn',
  'mm',
  'in',
  'bar',
  'psi',
  'kPa',
  'L',
  'mL',
  'kg',
  'g',
  'lb',
].concat(['min', 'h', 's', '°C', '°F', 'V', 'A', 'rpm', '%']);

export function unitsFor(spot: Spot): Proposal[] {
  const wanted = kindsAt(spot);
  if (wanted === 'none') return [];
  return units
    .filter((unit) => wanted === undefined || wanted.includes(unit.kind))
    .filter((unit) => unit.symbol !== '' && (wanted !== undefined || USUAL.includes(unit.symbol)))
    .map((unit): Proposal => {
      const usual = USUAL.indexOf(unit.symbol);
      const others = allSpellings(unit).filter((one) => one !== unit.symbol);
      return {
        label: unit.symbol,
        kind: 'unit',
        detail: `${unit.name} · ${unit.kind}`,
        ...(others.length > 0
          ? { documentation: `Also written ${others.map((one) => `\`${one}\``).join(', ')}.` }
          : {}),
        rank: usual < 0 ? 40 : usual / 100,
      };
    });
}

/** Undefined where any kind may come; `none` where numbers have no unit. */
function kindsAt(spot: Spot): readonly KindName[] | undefined | 'none' {
  const end = spot.before[spot.before.length - 1]!.end;
  // The number ends the smallest node that reaches up to it.
  const nodes = reaching(spot.file.parsed.tree, end);
  let action: Action | undefined;
  let wanted: Wanted | undefined | 'none';
  for (const node of nodes) {
    if (node.kind === 'action') {
      action = node as unknown as Action;
      wanted = VERB_KINDS[action.verb];
    } else if ('tail' in node) wanted = tailKinds(node as unknown as Tail, action);
    else if ('clause' in node) wanted = clauseKinds(node as unknown as Clause);
    else if ('header' in node) wanted = headerKinds(node as unknown as Header);
    else if (typeof node.kind === 'string' && node.kind in STAGE_KINDS)
      // A number alone is read as a torque; it may become an angle or a percentage.
      wanted = node.kind === 'torque' ? PLAN : STAGE_KINDS[node.kind as Stage['kind']];
  }
  return wanted === 'none' ? 'none' : wanted?.kinds;
}

const PLAN: Wanted = { kinds: ['torque', 'angle', 'number'], words: '' };

function clauseKinds(clause: Clause): Wanted | undefined | 'none' {
  switch (clause.clause) {
    case 'plan':
      return PLAN;
    case 'layout':
      return { kinds: ['length'], words: '' };
    case 'count':
    case 'item':
    case 'held by':
    case 'class':
    case 'grade':
    case 'thread':
      return 'none';
    case 'range':
      return { kinds: ['torque', 'pressure', 'length', 'temperature', 'voltage'], words: '' };
    case 'accuracy':
      return { kinds: ['number', 'torque'], words: '' };
    default:
      return CLAUSE_KINDS[clause.clause];
  }
}

function headerKinds(header: Header): Wanted | undefined | 'none' {
  if (header.header === 'time') return TIME_HEADER_KINDS;
  if (header.header === 'supplies') return SUPPLY_KINDS;
  return 'none';
}

function tailKinds(tail: Tail, action: Action | undefined): Wanted | undefined | 'none' {
  if (tail.tail === 'to') return TO_KINDS[action?.verb ?? ''];
  if (tail.tail === 'with') return SUPPLY_KINDS;
  if (tail.tail === 'within') return { kinds: ['time'], words: '' };
  if (tail.tail === 'stage' || tail.tail === 'times') return 'none';
  if (tail.tail === 'at' && action?.verb === 'check')
    return { kinds: ['torque', 'pressure', 'voltage'], words: '' };
  return TAIL_KINDS[tail.tail];
}

/** Nodes from the outside in whose text ends at an offset or goes on beyond it. */
function reaching(root: unknown, offset: number): Record<string, unknown>[] {
  const found: Record<string, unknown>[] = [];
  const into = (value: unknown): void => {
    if (Array.isArray(value)) for (const one of value) into(one);
    if (typeof value !== 'object' || value === null || Array.isArray(value)) return;
    const node = value as Record<string, unknown> & { start?: number; end?: number };
    if (typeof node.start === 'number') {
      if (node.start >= offset || node.end! < offset) return;
      found.push(node);
    }
    for (const one of Object.values(node)) into(one);
  };
  into(root);
  return found;
}
