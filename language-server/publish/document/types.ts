/**
 * A procedure ready to be published: plain data that goes through JSON unchanged. Pages, topics and other forms are
 * made from this alone, with no look back at the machine or the text. Every list may be empty; what is empty is told
 * to the reader as "none". `undefined` means: nobody has said it.
 */
import type { Axis, JobLists, Measure, Selection, When } from '../../lists/types.ts';

export type { Axis, JobLists, Measure, Selection, When };

/** Version of this shape: raised when a field changes its meaning; new fields do not raise it. */
export const DOCUMENT_VERSION = 1;

// ------------------------------------------------------------ text

/** A piece of a sentence. */
export type Run =
  | { kind: 'text'; text: string }
  /** A thing of the machine or a tool: `id` as in `things`. */
  | { kind: 'thing'; text: string; id: string }
  /** A quantity with its unit: `22 N·m (16.2 lbf·ft)`. */
  | { kind: 'measure'; text: string; measure: Measure }
  /** Another step, task or procedure; `target` is an id of this document, or a procedure's name. */
  | { kind: 'link'; text: string; target: string; to: 'step' | 'task' | 'procedure' };

/** A sentence or several. Texts joined are the sentence as plain text (`plainText`). */
export type Rich = Run[];

// ------------------------------------------------------------ the document

export interface ProcedureDocument {
  version: typeof DOCUMENT_VERSION;
  /** The procedure's name in the source. */
  id: string;
  /** The language and its spelling: which words of the catalogue it was written with. */
  language: 'en-GB' | 'en-US';
  title: string;
  number?: string;
  issue?: string;
  /** As in the source: `2026-11-02`. */
  date?: string;
  /** Change record, in the order written; the first is the latest. */
  changes: string[];
  /** What it is for, in a sentence or two. */
  purpose: string;
  machine: { id: string; title: string };
  /** All machines it is written for, the first being the one it was checked against. */
  machines: { id: string; title: string }[];
  appliesTo: {
    /** `All variants of the Tarnbrook T40.` or the restriction. */
    sentence: string;
    /** The axes on which readers can choose. Empty where there is only one machine. */
    axes: Axis[];
    /** The combinations for which the procedure is written (built, and inside `only`). Empty: all of them. */
    combinations: Selection[];
    /** Serial numbers, where the source says any. */
    serialNumbers: string[];
  };
  /** Where it is printed elsewhere and has no steps here. */
  elsewhere?: string;
  /** The state the machine is in at the start and at the end, in sentences. */
  startsWith: Rich[];
  endsWith: Rich[];
  lists: JobLists;
  /** Every hazard that a notice of the job names, worst first. */
  hazards: HazardAtAGlance[];
  /** Where something is different from variant to variant: for a table before the first step. */
  variantDifferences: VariantDifference[];
  /** The job itself. Tasks at the top; an item outside any task stands between them. */
  flow: FlowItem[];
  /** All things named, by id, for tooltips, drawings and lists. */
  things: { [id: string]: ThingInfo };
  /** Values, signatures and confirmations to be written down, in the order of the steps. */
  records: RecordField[];
  /** What is off, aside or open at the end on purpose. Empty: everything is back. */
  leftAtEnd: BenchEntry[];
  /** What came off against what went back, for the last count. */
  tally: TallyEntry[];
  /** What is thrown away, and what runs out. */
  waste: WasteEntry[];
  /** What to do when it does not come right, gathered from the steps. */
  troubles: Trouble[];
  waivers: Waiver[];
  pictures: Picture[];
  /** Procedures this one uses. */
  uses: ProcedureLink[];
  check: CheckResult;
  sources: SourceInfo[];
  /** The usual cautions and deference to local codes and licensed practice: print all of them. */
  cautions: string[];
}

export interface ThingInfo {
  id: string;
  /** Without article or capital: `cover bolts`. */
  name: string;
  type:
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
  count?: number;
  /** Names of positions where there are several: `1`, `2` or `left`, `right`. */
  positions: string[];
  item?: string;
  partNumber?: string;
  alsoCalled: string[];
  /** `M8x1.25`, `8.8` as stamped. */
  thread?: string;
  strength?: string;
  when?: When;
}

export interface HazardAtAGlance {
  /** `live`, `hot` … as in the language. */
  hazard: string;
  /** `Electric shock` */
  label: string;
  signal: SignalWord;
  /** Word shown under the convention: `DANGER`. */
  word: string;
  symbol: SymbolKind;
  /** The first notice that names it, as sentences. */
  text: Rich;
  /** Ids of the steps that the notices stand before. */
  steps: string[];
  when?: When;
}

export type SignalWord = 'danger' | 'warning' | 'caution' | 'notice' | 'note';
/** What a drawn sign shows. `general` is the exclamation mark. */
export type SymbolKind =
  | 'general'
  | 'electricity'
  | 'hot-surface'
  | 'cold'
  | 'pressure'
  | 'stored-energy'
  | 'flammable'
  | 'chemical'
  | 'lifting'
  | 'crushing'
  | 'sharp'
  | 'dust'
  | 'noise'
  | 'radiation'
  | 'falling-load'
  | 'property'
  | 'information';

export interface VariantDifference {
  when: When;
  /** Steps only done then, by id. */
  steps: string[];
  /** `Disconnect the capacitor lead.` … the headings of those steps. */
  sentences: string[];
}

// ------------------------------------------------------------ the flow

export type FlowItem = Task | Group | Step | Branch | Repeat | Hold | Choice | Stop | Note;

interface Item {
  /** Stable: made of names, not of numbers; the same after an unrelated step is put in. Fit for an anchor. */
  id: string;
  /** Only for these variants or choices; undefined: always (within what it stands in). */
  when?: When;
}

export interface Task extends Item {
  kind: 'task';
  /** `3` */
  number: string;
  title: string;
  items: FlowItem[];
}

/** Steps that belong together: a `step` block, a used procedure or task, a task in reverse, a round of `for each`. */
export interface Group extends Item {
  kind: 'group';
  number: string;
  title: string;
  origin:
    | { kind: 'step' }
    | { kind: 'task'; task: string }
    | { kind: 'procedure'; link: ProcedureLink }
    | { kind: 'reverse'; task: string }
    | { kind: 'each'; value: string };
  /** `As in task 2, Drain the oil.`, `This is task 2 in reverse.`; empty for a plain step block. */
  note: Rich;
  /** Empty where a used procedure is printed elsewhere: `note` says where. */
  items: FlowItem[];
}

/** One action, written out. */
export interface Step extends Item {
  kind: 'step';
  /** `3.2` */
  number: string;
  notices: Notice[];
  /** The imperative sentence: `Remove the six M8 bolts that hold the cover.` */
  heading: Rich;
  /**
   * Further sentences made from the source. Stages, orders and wrench settings are not among them: they stand in
   * `detail.fastening`, each with a sentence of its own.
   */
  more: Rich[];
  /** The author's own sentences. */
  said: Rich[];
  /** What shows that it is done. */
  expect: Rich[];
  detail: ActionDetail;
  measurement?: Measurement;
  pictures: Picture[];
  /** Things that change place in this step. */
  changes: ThingChange[];
  /** What is off or aside after this step. */
  bench: BenchEntry[];
  /** Values to write down here: ids in `records`. */
  records: string[];
  waivers: Waiver[];
  /** The time that this step waits, if any. */
  waits?: Measure;
  people?: number;
  /** Where it is written in the source: file and 1-based line. */
  source: { file: string; line: number };
  /** Where a step is a copy (of a `do`, a `reverse`), the id of the step or task it comes from. */
  copyOf?: string;
}

/** `if` and `when … otherwise` with more than one way: each way has its condition in words. */
export interface Branch extends Item {
  kind: 'branch';
  /** What it is decided by. */
  by: 'variant' | 'choice' | 'seen' | 'state';
  /** `Look: is there water in the oil?`; a whole sentence before the ways. */
  question: string;
  ways: Way[];
}

export interface Way {
  id: string;
  /** `If there is water in the oil:`; a clause with its colon. */
  label: string;
  when?: When;
  items: FlowItem[];
  /** True where the text says nothing for this way: go on. */
  goOn: boolean;
}

export interface Repeat extends Item {
  kind: 'repeat';
  number: string;
  /** `Repeat until no air comes from the nozzles, at most 5 times.` */
  sentence: string;
  /** `no air comes from the nozzles` */
  until: Rich;
  atMost?: number;
  items: FlowItem[];
  /** `If it does not come right after 5 times:`; with the steps. */
  otherwise?: { sentence: string; items: FlowItem[] };
}

/** A condition that lasts: `Keep the wrist strap on.` */
export interface Hold extends Item {
  kind: 'hold';
  text: Rich;
  items: FlowItem[];
}

export interface Choice extends Item {
  kind: 'choice';
  axis: string;
  /** `Decide: bench or machine.` */
  sentence: string;
}

export interface Stop extends Item {
  kind: 'stop';
  /** `Stop here. Renew the wheel bearings.` */
  text: Rich;
}

/** A note that informs and stands before no step. */
export interface Note extends Item {
  kind: 'note';
  notice: Notice;
}

export interface Notice {
  signal: SignalWord;
  /** As the convention has it: `DANGER`, `NOTICE`. */
  word: string;
  convention: string;
  hazards: { id: string; label: string }[];
  symbol: SymbolKind;
  /** The whole text. */
  text: Rich;
  /** The same text in parts, as far as they can be told apart: what it is, what happens, how to avoid it. */
  hazard?: string;
  consequence?: string;
  avoidance?: string;
}

// ------------------------------------------------------------ what a step does

export interface ActionDetail {
  /** The verb's key in the language: `remove`, `bolt up`. */
  verb: string;
  /** The verb as printed: `Refit`, `Reinstall`. */
  verbShown: string;
  fresh?: 'new' | 'kit';
  objects: ObjectUse[];
  tools: { id: string; name: string; range?: Measure }[];
  /** Consumables and fluids with amounts. */
  with: { id: string; name: string; amount?: Measure }[];
  /** Work on fasteners and unions, one entry for each group that is tightened, loosened or backed off here. */
  fastening: Fastening[];
  /** Which way round a thing goes, from the machine file: `arrow upwards`. */
  wayRound: { id: string; text: string }[];
  by?: Measure;
  within?: Measure;
  limits: { kind: 'not over' | 'not under'; measure: Measure }[];
  byHand: boolean;
  discards: boolean;
}

export interface ObjectUse {
  id: string;
  name: string;
  /** How many of them this step is about; undefined where the number is not known. */
  count?: number;
  /** Positions where not all are meant. */
  positions: string[];
  fresh: boolean;
}

export interface Fastening {
  id: string;
  name: string;
  count?: number;
  /** `tighten`, `loosen`, `back off`, `start` by hand, `check`. */
  work: 'tighten' | 'loosen' | 'back off' | 'start' | 'check';
  /** The final torque, where it has one. */
  torque?: Measure;
  /** Where the step tightens to a percentage of it: what that comes to. */
  pass?: Measure;
  /** One by one. Empty where there is no plan and no torque: as tight as usual. */
  stages: StageDetail[];
  order?: OrderDetail;
  wrenches: WrenchSetting[];
  /** Of a self-locking nut: add it to the torque. */
  prevailing?: Measure;
  leftHand: boolean;
  toYield: boolean;
  lubricated: string[];
  securedBy: string[];
}

export interface StageDetail {
  number: number;
  /** `Tighten to 22 N·m (16.2 lbf·ft).` */
  sentence: string;
  kind: 'torque' | 'angle' | 'percent' | 'by hand' | 'loosen' | 'back off' | 'wait' | 'until';
  measure?: Measure;
  again: boolean;
}

export interface OrderDetail {
  /** `across`, `from the middle`, `in turn`, `reverse`, `listed`. */
  kind: string;
  /** `Work from the middle outwards: 2, 5, 1, 4, 3, 6.` */
  sentence: string;
  /** Positions in the order they are worked; empty where it cannot be said. */
  sequence: string[];
  /** Where each lies, for a drawing: millimetres or, for circles and rows, units of the pitch. y grows upwards. */
  places: { position: string; x: number; y: number }[];
  layout?: 'circle' | 'rows' | 'places';
  /** Where number one lies: `nearest the motor`. */
  first?: string;
}

export interface WrenchSetting {
  /** Name of the torque wrench, where the step names one. */
  tool?: string;
  name: string;
  /** What to set on the scale. */
  setting: Measure;
  /** `Set the torque wrench to 20 N·m.` */
  sentence: string;
  /** Why the setting differs from the torque: adapter or prevailing torque. With the first of several stages. */
  because?: string;
}

export interface Measurement {
  /** `end float between the worm shaft and the gearbox` */
  what: string;
  with: string[];
  /** The record field the reading is written into. */
  record?: string;
  kind: 'measure' | 'inspect' | 'check' | 'record' | 'choose';
  rows: OutcomeRow[];
  /** For `choose`: the table it is chosen from. */
  table?: { title: string; by: string; rows: { reading: string; gives: string }[] };
}

export interface OutcomeRow {
  id: string;
  /** `below 0.05 mm (0.0020 in)` or the word: `worn`. */
  reading: string;
  low?: { value: number; included: boolean };
  high?: { value: number; included: boolean };
  unit?: string;
  /** `act`: the text does not tell whether it is right; what follows is to be done. */
  meaning: 'right' | 'not right' | 'stop' | 'act';
  /** `right: go on`, `not right`, `stop` in words. */
  meaningText: string;
  /** One line for a table: `Send the cylinder for facing.`; `Go on.` where nothing is to do. */
  action: string;
  /** The steps in full; number and ids are those of the flow. */
  items: FlowItem[];
}

export interface Picture {
  file: string;
  alt: string;
  step: string;
}

// ------------------------------------------------------------ records, bench, waste

export interface RecordField {
  id: string;
  step: string;
  kind: 'value' | 'text' | 'signature' | 'second-person';
  label: string;
  unit?: string;
  when?: When;
}

export interface ThingChange {
  id: string;
  name: string;
  count?: number;
  positions: string[];
  change:
    | 'off'
    | 'back'
    | 'aside'
    | 'new'
    | 'discarded'
    | 'apart'
    | 'together'
    | 'away'
    | 'tool-on'
    | 'tool-off';
}

export interface BenchEntry {
  id: string;
  name: string;
  count?: number;
  state: 'off' | 'aside' | 'apart' | 'away' | 'discarded';
  when?: When;
}

export interface TallyEntry {
  id: string;
  name: string;
  count?: number;
  off: HandCount;
  back: HandCount;
  fresh: HandCount;
  discarded: HandCount;
  when?: When;
}

/** How often hands do it; what is found decides between the least and the most. A repeat counts once. */
export interface HandCount {
  least: number;
  most: number;
}

export interface WasteEntry {
  id: string;
  name: string;
  count?: number;
  amount?: Measure;
  kind: 'part' | 'fluid' | 'consumable';
  /** What to do with it, in a sentence. */
  disposal: string;
  when?: When;
}

export interface Trouble {
  /** The step or repeat where it shows. */
  step: string;
  number: string;
  /** `The belt does not give 8 mm after 6 times.` */
  sign: string;
  /** What to do, in sentences. */
  remedy: string[];
  stops: boolean;
  when?: When;
}

export interface Waiver {
  check: string;
  /** The check's title. */
  title: string;
  reason: string;
  step?: string;
}

export interface ProcedureLink {
  /** The procedure's name. */
  id: string;
  title: string;
  number?: string;
  issue?: string;
  /** The file it is written in. */
  file: string;
  /** Where it is printed, when it is not written in this project. */
  elsewhere?: string;
}

export interface CheckResult {
  /** False: the document was made without a check. */
  checked: boolean;
  errors: number;
  warnings: number;
  informations: number;
  hints: number;
  /** `Checked by Dowel: no findings.` and what that does and does not mean. */
  sentence: string;
  /** The findings themselves, worst first. */
  findings: { check: string; severity: string; message: string; file: string; line: number }[];
}

export interface SourceInfo {
  file: string;
  /** ISO date of the last change, where the caller gave one. */
  date?: string;
}

/** A text run by run as one plain string. */
export function plainText(rich: readonly Run[]): string {
  return rich.map((run) => run.text).join('');
}
