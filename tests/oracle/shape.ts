/** What the oracle's reader makes of a file: plain data, with the place of every action in the text. */

export interface Ref {
  name: string;
  /** Positions as typed, ranges kept: `['1', '3..5', 'n']`. Empty: all of them. */
  positions: string[];
  count?: number;
}

export type Condition =
  | { kind: 'axis'; axis: string; values: string[]; negated: boolean }
  | { kind: 'state'; ref: Ref; state: string; negated: boolean }
  | { kind: 'seen'; text: string }
  | { kind: 'and'; parts: Condition[] };

/** `hub, cap off` · `all of hub off except spindle` · `everything off`. */
export interface Claim {
  scope: 'things' | 'all of' | 'everything';
  refs: Ref[];
  state: string;
  except: Ref[];
  line: number;
}

export type Stage = 'torque' | 'loosen' | 'back off' | 'by hand' | 'other';

export interface Clause {
  clause: string;
  refs: Ref[];
  /** What stands after `to` in `clamps … to …` and `joins … to …`. */
  to: Ref[];
  each?: number;
  count?: number;
  names: string[];
  condition?: Condition;
  stages: Stage[];
  toYield: boolean;
  /** Of `hazard`: how bad it is at its worst, and during what. */
  harm?: string;
  when?: string[];
  /** The first number and unit of a quantity. */
  amount?: Amount;
}

export interface Amount {
  value: number;
  unit: string;
}

export interface Declaration {
  kind: string;
  name: string;
  /** What readers are told it is called. */
  title: string;
  clauses: Clause[];
}

export interface Coupled {
  refs: Ref[];
  while?: Condition;
}

export interface Machine {
  name: string;
  extends?: string;
  declarations: Declaration[];
  coupled: Coupled[];
  variants: { name: string; values: string[] }[];
  nevers: Condition[];
}

export interface Action extends Placed {
  kind: 'action';
  verb: string;
  fresh?: 'new' | 'kit';
  objects: Ref[];
  /** The last two objects are joined by `and`. */
  together: boolean;
  with: Ref[];
  between: Ref[];
  /** `move pulley to new pump` */
  toNew?: Ref;
  byHand: boolean;
  discard: boolean;
  until: boolean;
  at: boolean;
  stage?: number;
  /** Percent; NaN where the pass has no percentage. */
  pass?: number;
  outcomes: Block[];
  /** `with 2 people` */
  people?: number;
  /** `with 1.2 L pump-oil` */
  amounts: { amount: Amount; fluid?: string }[];
  /** `wait 5 min`, `for 5 min`. */
  time?: Amount;
  /** What it says to the reader. */
  texts: string[];
}

export interface Block {
  statements: Statement[];
}

/** `start` and `end` are its place in the text; `line` counts from 1. */
export interface Placed {
  start: number;
  end: number;
  line: number;
}

export type Flow = Placed &
  (
    | { kind: 'task'; name: string; body: Block }
    | { kind: 'step' | 'hold'; body: Block }
    | { kind: 'when' | 'if'; condition: Condition; body: Block; otherwise?: Block }
    | { kind: 'choice'; name: string; values: string[] }
    | { kind: 'repeat'; body: Block; otherwise?: Block }
    | { kind: 'for each'; variable: string; values: string[]; of?: Ref; body: Block }
    | { kind: 'reverse'; task: string; except: Ref[] }
    | { kind: 'do'; name: string }
    | { kind: 'stop' | 'continues' }
    | { kind: 'notice'; signal: string; hazards: string[]; text: string }
  );

export type Statement = Action | Flow;

export interface Procedure {
  name: string;
  machines: string[];
  starts: Claim[];
  startsWhere?: { name: string; line: number };
  ends: Claim[];
  only?: Condition;
  tools: Ref[];
  supplies: Ref[];
  /** Amounts of fluid after `supplies`. */
  stock: { amount: Amount; fluid: string }[];
  people?: number;
  time?: Amount;
  /** Missing where the procedure is printed elsewhere. */
  body?: Block;
  /** `allow check because "…"`: holds for the statement after it, as lines. */
  allows: { check: string; from: number; to: number }[];
  start: number;
  end: number;
}

export interface DowelFile {
  uses: string[];
  machines: Machine[];
  /** Declarations outside any machine. */
  loose: Machine;
  procedures: Procedure[];
}
