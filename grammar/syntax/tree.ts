/**
 * The typed syntax tree. Plain data: offsets are UTF-16 positions in the file's text, `end` is exclusive.
 * Every node has its range; what the author has not typed yet is simply missing (`undefined` or an empty
 * list), so that everything downstream works on half a file. Nothing here knows what the text means.
 */

export interface Span {
  start: number;
  end: number;
}

/** A text by the offsets of its tree: the text itself, or what stands for it where lines have places of their own. */
export interface Written {
  slice(start?: number, end?: number): string;
  /** The offset that lies so many characters behind another one, where that is not their sum. */
  after?(offset: number, count: number): number;
}

/** A word used as a name (or a word of the language standing where its exact place matters). */
export interface Name extends Span {
  text: string;
}

/** `#3`, `#1..#4`, `#left`, `#n`: the text without the hash. */
export interface Position extends Span {
  from: string;
  to?: string;
}

/** A name in use: `head-bolts`, `bearing-caps #2, #3`, `head-bolts x2` (how many of them). */
export interface Ref extends Span {
  name: Name;
  positions: Position[];
  count?: number;
}

/** One quoted text, or several in a row read as one. `value` has escapes undone. */
export interface Text extends Span {
  value: string;
  /** `{name}` inside the text: the name and where it stands. */
  holes: Name[];
}

/** A number as typed and the unit that follows it directly, if any. */
export interface Amount extends Span {
  /** As typed: `25`, `0.05`, `1/6`, `1 1/2`. */
  number: string;
  unit?: Name;
}

/**
 * plain `25 N·m` · range `5..60 N·m` · tolerance `25 ± 3 N·m` · spread `500 +1/-0 micron` ·
 * sum `1 h 30 min`. A unit given once at the end holds for the amounts before it (never for a sum).
 */
export interface Quantity extends Span {
  form: 'plain' | 'range' | 'tolerance' | 'spread' | 'sum';
  amounts: Amount[];
  /** A declared value in the place of a quantity (`torque wheel-torque`); `amounts` is empty then. */
  named?: Ref;
  bound?: 'at least' | 'at most';
  /** The author's own second unit in brackets: `80 lbf·ft (110 N·m)`. */
  second?: Quantity;
}

export type Expression =
  | ({ kind: 'quantity'; quantity: Quantity } & Span)
  | ({ kind: 'name'; ref: Ref } & Span)
  | ({ kind: 'binary'; operator: '+' | '-' | '*' | '/'; left: Expression; right?: Expression } & Span)
  /** `average of a, b` · `larger of a, b` · `smaller of a, b` · `sum of a, b` */
  | ({ kind: 'call'; name: Name; arguments: Expression[] } & Span);

// ---------------------------------------------------------------- conditions and states

export type Condition = Span &
  (
    | { kind: 'axis'; axis: Name; values: Name[]; negated: boolean }
    | { kind: 'state'; ref: Ref; state: Name; negated: boolean }
    /** What the technician sees: `if "the disc is scored"`. */
    | { kind: 'seen'; text: Text }
    | { kind: 'and'; parts: Condition[] }
  );

/** `supply isolated` · `all of hub off except spindle` · `everything off`. */
export interface StateClaim extends Span {
  scope: 'things' | 'all of' | 'everything';
  refs: Ref[];
  /** One word (`off`, `isolated`, `drained`, `hand-tight` …). */
  state?: Name;
  except: Ref[];
}

// ---------------------------------------------------------------- fastening

export type Order = Span &
  (
    | { kind: 'named'; name: 'from the middle' | 'across' | 'in turn' | 'reverse' }
    | { kind: 'listed'; positions: Position[] }
  );

export type Layout = Span &
  (
    | { kind: 'rows'; rows: number; of: number; first?: Text }
    | { kind: 'circle'; first?: Text }
    /** Coordinates of #1, #2 … in the unit that ends the list. */
    | { kind: 'places'; places: { x: string; y: string }[]; unit?: Name; first?: Text }
  );

export type Stage = Span &
  (
    | { kind: 'torque'; quantity: Quantity }
    | { kind: 'angle'; quantity: Quantity }
    | { kind: 'percent'; quantity: Quantity }
    | { kind: 'by hand' }
    | { kind: 'loosen' }
    | { kind: 'back off'; quantity?: Quantity }
    | { kind: 'wait'; quantity?: Quantity }
    | { kind: 'until'; text: Text; turning?: Ref }
    /** Work again as the first pass: `again 25 N·m`, after a wait or a loosening. */
    | { kind: 'again'; quantity?: Quantity }
  );

export interface Plan extends Span {
  stages: Stage[];
  toYield: boolean;
}

// ---------------------------------------------------------------- the machine

export type DeclarationKind =
  | 'part'
  | 'fastener'
  | 'seal'
  | 'connection'
  | 'control'
  | 'isolator'
  | 'face'
  | 'system'
  | 'fluid'
  | 'consumable'
  | 'tool'
  | 'kit';

/**
 * A clause of a declaration. `word` spans the words that begin it. Which clause can stand in which
 * declaration is data (`CLAUSES_OF` in ../tokens/clauses.ts).
 */
export type Clause = Span & { word: Name } & (
    | {
        clause:
          | 'on'
          | 'under'
          | 'sealed by'
          | 'joined by'
          | 'opens'
          | 'carries'
          | 'part of'
          | 'supplied with'
          | 'like'
          | 'lubricated with'
          | 'in'
          | 'relieved at'
          | 'drained at'
          | 'filled at'
          | 'vented at'
          | 'isolated at'
          | 'bled at'
          | 'proved with'
          | 'runs'
          | 'locks'
          | 'contains'
          | 'coated with';
        refs: Ref[];
      }
    /** `held by cap-bolts 2 each` */
    | { clause: 'held by'; refs: Ref[]; each?: number }
    /** `with washer x2`: goes and comes with each one of the group. */
    | { clause: 'with'; refs: Ref[] }
    | { clause: 'clamps'; refs: Ref[]; to: Ref[] }
    | { clause: 'joins'; refs: Ref[]; to: Ref[] }
    /** `secured by lock-tab` · `secured by wire` (also: tab, second-nut, compound, pin, clip) */
    | { clause: 'secured by'; refs: Ref[] }
    | { clause: 'count'; count: number }
    | { clause: 'positions'; names: Name[] }
    | {
        clause:
          | 'matched'
          | 'numbered'
          | 'single-use'
          | 'added'
          | 'fixed'
          | 'left-hand'
          | 'stay'
          | 'first off'
          | 'last on'
          | 'slack'
          | 'frees when loose'
          | 'needs bleeding'
          | 'adapter'
          | 'closes clockwise'
          | 'closes counter-clockwise';
      }
    | { clause: 'goes' | 'part number' | 'stored'; text?: Text }
    | { clause: 'also called'; texts: Text[] }
    | { clause: 'item'; number?: string }
    | { clause: 'only'; condition?: Condition }
    /** `hazard pressure can kill when opening`; `harm` is one of `HARM_WORDS` (../tokens/clauses.ts). */
    | { clause: 'hazard'; hazards: Name[]; when: Name[]; harm?: Name }
    | {
        clause:
          | 'mass'
          | 'torque'
          | 'pressure'
          | 'temperature'
          | 'live'
          | 'service fill'
          | 'range'
          | 'accuracy'
          | 'length'
          | 'open time'
          | 'curing time'
          | 'nut factor'
          | 'thread friction'
          | 'head friction'
          | 'prevailing torque'
          | 'not over';
        quantity?: Quantity;
      }
    | { clause: 'holds'; quantity?: Quantity; fluid?: Ref }
    /** Designation as typed: `M8x1.25`, `1/2-13 UNC`; `class 8.8`, `grade 5`. */
    | { clause: 'thread' | 'class' | 'grade'; designation?: Name }
    | { clause: 'layout'; layout?: Layout }
    | { clause: 'order'; order?: Order }
    | { clause: 'plan'; plan: Plan }
    | { clause: 'normally'; state?: Name }
  );

export type ClauseName = Clause['clause'];

export interface Declaration extends Span {
  kind: 'declaration';
  type: DeclarationKind;
  /** The word `part`, `fastener` … */
  word: Name;
  name?: Name;
  title?: Text;
  clauses: Clause[];
}

export interface Coupled extends Span {
  kind: 'coupled';
  refs: Ref[];
  while?: Condition;
}

export interface Value extends Span {
  kind: 'value';
  name?: Name;
  title?: Text;
  expression?: Expression;
}

export type Interval = Span & {
  bound: 'below' | 'up to' | 'from' | 'over' | 'between' | 'exactly';
  quantity?: Quantity;
};

export interface TableRow extends Span {
  interval: Interval;
  /** What the row gives: a quantity or expression, or things with counts. */
  gives: Expression[];
}

export interface Table extends Span {
  kind: 'table';
  name?: Name;
  title?: Text;
  rows: TableRow[];
}

export interface Variant extends Span {
  kind: 'variant';
  name?: Name;
  values: Name[];
}

/** `never size is small and supply is three-phase`: a combination that is not built. */
export interface Never extends Span {
  kind: 'never';
  condition?: Condition;
}

export type Selector = Span &
  (
    | { kind: 'named'; ref: Ref }
    /** `any connection of any system with pressure` */
    | { kind: 'any'; what: Name; of?: Selector; with?: Name }
    /** `that system`: the one met by an earlier `any`. */
    | { kind: 'that'; what: Name }
  );

export type RulePattern = Span &
  (
    | { kind: 'event'; verb: Name; selectors: Selector[]; quantity?: Quantity; times?: number }
    | { kind: 'state'; selectors: Selector[]; state: Name; negated: boolean }
  );

export interface RuleBody extends Span {
  scope: 'always' | 'before' | 'after' | 'while';
  trigger?: RulePattern;
  demand: 'require' | 'never';
  demanded?: RulePattern;
}

export interface Rule extends Span {
  kind: 'rule';
  name?: Name;
  title?: Text;
  bodies: RuleBody[];
}

export type MachineItem = Declaration | Coupled | Value | Table | Variant | Never | Rule | Broken;

export interface Machine extends Span {
  kind: 'machine';
  name?: Name;
  title?: Text;
  extends?: Name;
  items: MachineItem[];
}

// ---------------------------------------------------------------- the procedure

export type Header = Span & { word: Name } & (
    | { header: 'for'; refs: Ref[] }
    | { header: 'document'; number?: Text; issue?: string; date?: Text }
    | { header: 'people'; count?: number }
    | { header: 'skill'; text?: Text }
    /** Of the machines that it is written for. */
    | { header: 'serial numbers'; text?: Text }
    | { header: 'time'; quantity?: Quantity }
    | { header: 'wear'; names: Name[] }
    | { header: 'tools'; refs: Ref[] }
    /** New parts, fluids and consumables that the job is issued with. */
    | { header: 'supplies'; refs: Ref[]; fluids: { quantity: Quantity; fluid?: Ref }[] }
    | { header: 'starts with' | 'ends with'; claims: StateClaim[] }
    | { header: 'starts where'; ref?: Ref }
    | { header: 'elsewhere'; text?: Text }
    | { header: 'only'; condition?: Condition }
    | { header: 'needs' | 'change'; text?: Text }
  );

export interface Procedure extends Span {
  kind: 'procedure';
  name?: Name;
  title?: Text;
  headers: Header[];
  /** Missing where the procedure is printed elsewhere or not typed yet. */
  body?: Block;
}

/** Statements between braces; `start` and `end` include the braces that are there. */
export interface Block extends Span {
  statements: Statement[];
  closed: boolean;
}

export interface Task extends Span {
  kind: 'task';
  name?: Name;
  title?: Text;
  body?: Block;
}

export interface Step extends Span {
  kind: 'step';
  title?: Text;
  body?: Block;
}

export interface Notice extends Span {
  kind: 'notice';
  signal: 'danger' | 'warning' | 'caution' | 'notice' | 'note';
  word: Name;
  hazards: Name[];
  text?: Text;
}

export interface When extends Span {
  kind: 'when';
  condition?: Condition;
  body?: Block;
  otherwise?: Block;
}

export interface If extends Span {
  kind: 'if';
  condition?: Condition;
  body?: Block;
  otherwise?: Block;
}

/** `choice place: bench, in-place`: the technician's own choice, an axis from here on. */
export interface Choice extends Span {
  kind: 'choice';
  name?: Name;
  values: Name[];
}

export interface Repeat extends Span {
  kind: 'repeat';
  until?: Condition;
  atMost?: number;
  body?: Block;
  otherwise?: Block;
}

export interface ForEach extends Span {
  kind: 'for each';
  /** `cylinder` or, for `#n`, `n`. */
  variable?: Name;
  over?:
    | ({ kind: 'numbers'; from: number; to: number } & Span)
    | ({ kind: 'names'; names: Name[] } & Span)
    | ({ kind: 'positions'; ref: Ref } & Span);
  body?: Block;
}

export interface Reverse extends Span {
  kind: 'reverse';
  task?: Name;
  except: Ref[];
}

export interface Do extends Span {
  kind: 'do';
  ref?: Name;
}

export interface Hold extends Span {
  kind: 'hold';
  text?: Text;
  body?: Block;
}

export interface Allow extends Span {
  kind: 'allow';
  check?: Name;
  reason?: Text;
}

export interface Stop extends Span {
  kind: 'stop';
  text?: Text;
}

export interface Continues extends Span {
  kind: 'continues';
}

/** `up to 0.04 mm { }` · `tight { }` · `otherwise { }`: one outcome of a measurement, check or inspection. */
export interface Outcome extends Span {
  /** `below 3 mm or over 5 mm`; none where the outcome is a word. */
  intervals: Interval[];
  /** How several are joined, as typed: `and` is for a reading that is in all of them. */
  join?: 'or' | 'and';
  word?: Name;
  body?: Block;
}

export type Tail = Span & { word: Name } & (
    | { tail: 'with'; refs: Ref[]; people?: number; quantity?: Quantity }
    | { tail: 'holding'; refs: Ref[]; with: Ref[] }
    /** `while turning drum`: the verb's -ing form as typed. */
    | { tail: 'while'; doing?: Name; refs: Ref[] }
    | { tail: 'by hand' }
    | { tail: 'by' | 'from' | 'into' | 'between' | 'of' | 'except'; refs: Ref[] }
    | { tail: 'until'; text?: Text }
    | { tail: 'for'; quantity?: Quantity; text?: Text }
    | { tail: 'within'; quantity?: Quantity }
    | { tail: 'not over' | 'not under'; quantity?: Quantity }
    | { tail: 'in order'; order?: Order }
    | { tail: 'at'; positions: Position[]; quantity?: Quantity; refs: Ref[] }
    | { tail: 'to'; quantity?: Quantity; text?: Text; refs: Ref[]; below: boolean; fresh: boolean }
    | { tail: 'stage' | 'pass'; quantity?: Quantity }
    | { tail: 'times'; count: number }
    /** `as zero`; `as zero #n` for a value of its own at each position. */
    | { tail: 'as'; name?: Name; positions: Position[] }
    | { tail: 'expect'; text?: Text }
    | { tail: 'picture'; file?: Text; shows?: Text }
    | { tail: 'and discard' }
  );

export type TailName = Tail['tail'];

/**
 * One thing to do. `verb` is the verb's key in the word list (`lock out`, `prove`, `fit`), `word` where
 * its words stand. `fresh` is `new` or `kit` as in `fit new`, `fit kit`.
 */
export interface Action extends Span {
  kind: 'action';
  verb: string;
  word: Name;
  fresh?: 'new' | 'kit';
  /**
   * What the action is about. For `measure`, `record` and `choose` also what stands after `of` or `between`:
   * `measure gap between a and b` has the objects a and b, and a tail `between` that has its word only.
   */
  objects: Ref[];
  /** True where the last two objects are joined by `and`: done together, not one after the other. */
  together: boolean;
  /** What is measured or recorded: `warp` in `measure warp of cylinder-head`. */
  topic?: Name;
  /** `turn flywheel 2 turns`, `back off nut 1/6 turn`, `wait 30 min`. */
  quantity?: Quantity;
  /** `record total = gap + 0.2 mm` */
  expression?: Expression;
  tails: Tail[];
  text?: Text;
  outcomes: Outcome[];
}

/** Text that could not be read, kept so that nothing is lost. */
export interface Broken extends Span {
  kind: 'broken';
}

export type Statement =
  | Task
  | Step
  | Notice
  | When
  | If
  | Choice
  | Repeat
  | ForEach
  | Reverse
  | Do
  | Hold
  | Allow
  | Stop
  | Continues
  | Action
  | Value
  | Broken;

// ---------------------------------------------------------------- the file

export interface Use extends Span {
  kind: 'use';
  path?: Text;
}

export type FileItem = Use | Machine | Procedure | MachineItem;

export interface Comment extends Span {
  text: string;
}

/** A token as the formatter and the colouring need it: its kind, place, and whether it begins a line. */
export interface Token extends Span {
  /** 'word' | 'text' | 'number' | 'unit' | 'position' | 'count' | 'thread' | 'mark' | 'bad' */
  type: 'word' | 'text' | 'number' | 'unit' | 'position' | 'count' | 'thread' | 'mark' | 'bad';
  beginsLine: boolean;
}

export interface SourceFile extends Span {
  kind: 'file';
  items: FileItem[];
}

/** Something wrong with the text itself. `check` is the name of the finding it becomes. */
export interface SyntaxProblem extends Span {
  check: string;
  message: string;
  /** A small right example, where it helps. */
  example?: string;
  /** Another place that belongs to the story (the brace that was never closed). */
  related?: Span & { message: string };
  /** What to put in place of a range to mend it, where that is certain. */
  mend?: { title: string; start: number; end: number; text: string };
}

export interface ParsedFile {
  tree: SourceFile;
  tokens: Token[];
  comments: Comment[];
  problems: SyntaxProblem[];
}
