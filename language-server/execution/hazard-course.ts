/** What is remembered of hazards and notices while a procedure is carried out. */
import type { Notice } from '../../grammar/syntax/tree.ts';
import type { Signal } from '../hazards/index.ts';
import type { CaseSet } from './cases.ts';
import type { DeclaredHazard, Meeting } from './declared-hazards.ts';
import type { BehindMemory } from './notices-behind.ts';
import type { Step } from './watch-place.ts';

/** What is known of one declared hazard so far. */
export interface Course {
  readonly declared: DeclaredHazard;
  /** Safe as the state stands. */
  safe: CaseSet;
  /** Noticed (or found without a notice) while its energy was there. */
  settled: CaseSet;
  /** Settled and made safe since. */
  handled: CaseSet;
  /** Steps that began to make it safe without a notice before them. */
  beginnings: Beginning[];
  /** A step that may be one: the state after it tells. */
  perhaps: Beginning | undefined;
}

export interface Beginning {
  readonly step: Step;
  /** What the step is about. */
  readonly via: number;
  cases: CaseSet;
}

export interface Given {
  readonly hazard: string;
  readonly cases: CaseSet;
  /** Absent where a missing notice was found: it is not missed twice in a task. */
  readonly notice?: Notice;
  /** The cases in which no step has come near the hazard since: it stands directly before the next that does. */
  ahead: CaseSet;
}

export interface Missing {
  readonly course: Course;
  readonly meeting: Meeting;
  /** Where the notice belongs, and the step that comes near. */
  readonly step: Step;
  readonly near: Step;
  /** What the step is about where it only begins to make safe. */
  readonly begun: number | undefined;
  cases: CaseSet;
  /** A notice that comes after, as long as nothing else follows that it can be about. */
  late: { notice: Notice; file: string } | undefined;
  open: boolean;
}

export interface Scope {
  readonly given: Given[];
  readonly missing: Missing[];
  /** Actions seen when it was entered. */
  readonly acted: number;
}

export interface Weak {
  readonly notice: Notice;
  readonly file: string;
  readonly declared: DeclaredHazard;
  readonly needed: Signal;
  cases: CaseSet;
}

export interface HazardMemory {
  courses: Course[];
  found: Missing[];
  weak: Weak[];
  cooled: [number, CaseSet][];
  scopes: { given: Given[]; missing: Missing[]; idle: boolean }[];
  unnamed: CaseSet;
  behind: BehindMemory;
}
