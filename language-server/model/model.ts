/**
 * A machine as the checks see it: its things, numbered; each thing's items (one for each position), numbered
 * through; and what sits on, covers, holds, seals, joins and opens what, item by item. Plain data, made once
 * for a machine by build.ts.
 */

import type {
  Declaration,
  DeclarationKind,
  Expression,
  Machine,
  Quantity,
  Rule,
  Stage,
  Table,
} from '../../grammar/syntax/tree.ts';
import type { CaseSet, Cases } from '../execution/cases.ts';
import type { Place } from '../report/finding.ts';

/** Stands for the ground (the bench, the chassis, the wall) where a chain of seats ends. */
export const GROUND = -1;

export interface Thing {
  readonly id: number;
  readonly name: string;
  readonly type: DeclarationKind;
  /** For messages: the title, or the name with spaces. */
  readonly title: string;
  /** Where its name is declared. */
  readonly place: Place;
  readonly declaration: Declaration;
  /** Items are `first … first + positions.length - 1`. */
  readonly first: number;
  /** All of them. */
  readonly items: readonly number[];
  /** Names of the positions; a single `''` where there is one or the count is not known. */
  readonly positions: readonly string[];
  /** The number declared, where there is one. */
  readonly count: number | undefined;
  readonly exists: CaseSet;
  readonly matched: boolean;
  readonly numbered: boolean;
  readonly singleUse: boolean;
  readonly added: boolean;
  readonly fixed: boolean;
  readonly stays: boolean;
  readonly freesWhenLoose: boolean;
  readonly slack: boolean;
  readonly needsSecuring: boolean;
  readonly needsBleeding: boolean;
  /** What goes on it before its joint closes, by the names that are declared. */
  readonly coatedWith: readonly string[];
  readonly lubricatedWith: readonly string[];
  readonly toYield: boolean;
  readonly stages: readonly Stage[];
  readonly torque: Quantity | undefined;
  readonly holds: Quantity | undefined;
  readonly hasPressure: boolean;
  readonly hasHeat: boolean;
  readonly hasLive: boolean;
  readonly hasFluid: boolean;
  readonly provable: boolean;
  readonly normally: string | undefined;
}

export interface Coupling {
  items: number[];
  /** The tool, belt or part that must be in place for the coupling to act. */
  while?: { item: number; fitted: boolean };
}

export interface Model {
  readonly name: string;
  readonly title: string;
  readonly machine: Machine | undefined;
  readonly cases: Cases;
  /** The combinations of variants that are built. */
  readonly built: CaseSet;
  readonly things: readonly Thing[];
  readonly byName: ReadonlyMap<string, Thing>;
  readonly variants: ReadonlyMap<string, { axis: number; values: readonly string[]; place: Place }>;
  readonly values: ReadonlyMap<string, { expression: Expression | undefined; place: Place; title: string }>;
  readonly tables: ReadonlyMap<string, Table>;
  readonly rules: readonly { rule: Rule; file: string }[];
  readonly couplings: readonly Coupling[];
  /** How many items there are; item -> thing. */
  readonly items: number;
  readonly thingOf: readonly Thing[];

  // Item by item. Lists are empty, never missing.
  readonly seats: readonly (readonly number[])[];
  readonly riders: readonly (readonly number[])[];
  /** What must be off before the item is reachable, for each reason one entry. */
  readonly covers: readonly (readonly number[])[];
  readonly fastenersOf: readonly (readonly number[])[];
  /** Fasteners named in `held by`: what `unbolt` and `bolt up` work. */
  readonly heldBy: readonly (readonly number[])[];
  /** Of a fastener or connection: what it holds or joins together. */
  readonly members: readonly (readonly number[])[];
  /** Of a fastener or connection: the cases in which it holds something to the ground. */
  readonly groundOf: readonly CaseSet[];
  readonly connectionsOf: readonly (readonly number[])[];
  readonly seals: readonly (readonly number[])[];
  readonly sealedParts: readonly (readonly number[])[];
  /** Systems (by item) that coming off or opening opens. */
  readonly opens: readonly (readonly number[])[];
  readonly carries: readonly (readonly number[])[];
  readonly carriedBy: readonly (readonly number[])[];
  /** Faces that become dirty when the item comes off, and that must be clean before it goes back. */
  readonly faces: readonly (readonly number[])[];
  /** Comes with a new one: members (`part of`) and what is `supplied with` it. */
  readonly comesWith: readonly (readonly number[])[];
  /** Of a system. */
  readonly reliefPoints: readonly (readonly number[])[];
  readonly drainPoints: readonly (readonly number[])[];
  readonly fillPoints: readonly (readonly number[])[];
  readonly bleedPoints: readonly (readonly number[])[];
  readonly isolators: readonly (readonly number[])[];
  readonly openedBy: readonly (readonly number[])[];
  /** Of a control or isolator: the systems that it relieves, drains, isolates. */
  readonly relieves: readonly (readonly number[])[];
  readonly drains: readonly (readonly number[])[];
  readonly isolates: readonly (readonly number[])[];
  /** Points at which a system is filled, vented or bled: opening them does not open the system. */
  readonly servicePoints: readonly (readonly number[])[];
  /** Of a part: the systems that running it runs. */
  readonly runs: readonly (readonly number[])[];
  /** Of a tool: what it locks. */
  readonly locks: readonly (readonly number[])[];
  /** Of a kit. */
  readonly contains: readonly (readonly number[])[];
}

/** `head bolts #1, #3` as a reader says it: all positions are the plain title. */
export function mention(thing: Thing, items?: readonly number[]): string {
  if (!items || items.length >= thing.positions.length || thing.positions.length === 1) return thing.title;
  const names = items.map((item) => `#${thing.positions[item - thing.first] ?? ''}`);
  return `${thing.title} ${list(names)}`;
}

/** `a`, `a and b`, `a, b and c` */
export function list(words: readonly string[], joined: 'and' | 'or' = 'and'): string {
  if (words.length <= 1) return words.join('');
  return `${words.slice(0, -1).join(', ')} ${joined} ${words[words.length - 1]}`;
}
