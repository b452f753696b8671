/**
 * What a job needs, as plain data: tools, new parts, fluids, people, time. Every list may be empty; a reader is then
 * told "none". An entry that is not for every variant carries a `when`.
 */

/** A message of the catalogue with its values put in; `count` chooses between one and several. */
export type Say = (key: ListMessage, values?: Readonly<Record<string, string | number>>) => string;

/** The messages that lists need. */
export type ListMessage = 'when.if' | 'when.variant' | 'when.choice' | 'when.and' | 'when.or';

/** A quantity as a reader sees it, and as a program does. */
export interface Measure {
  /** In the author's own unit: `22 N·m`, `5..60 N·m` as `5 to 60 N·m`. */
  text: string;
  /** In a second unit, where there is a usual one: `16.2 lbf·ft`. Converted back it lies in the tolerance of the first. */
  second?: string;
  /** The lower and upper end (equal for one value) in `unit`; what is open has no number. */
  low?: number;
  high?: number;
  /** Canonical name of the unit of `low` and `high`, as the author wrote it: `N·m`, `L`, `min`. */
  unit: string;
}

/** One combination: for each axis named, the values for which it holds. An axis not named may have any value. */
export type Selection = { [axis: string]: string[] };

/** For which variants and choices something holds. It holds where any of the selections does. */
export interface When {
  /** `if the supply is single-phase`: stands behind or before a sentence; no capital, no full stop. */
  sentence: string;
  any: Selection[];
}

export interface ListEntry {
  /** The name in the machine file; '' for what has none. */
  id: string;
  /** For readers, no article, no capital: `cover gasket`. */
  name: string;
  when?: When;
}

export interface ToolEntry extends ListEntry {
  range?: Measure;
  accuracy?: Measure;
  length?: Measure;
  partNumber?: string;
  /** Named in the header of the job; false where a step uses it and the header leaves it out. */
  listed: boolean;
}

export interface PartEntry extends ListEntry {
  /** How many new ones go in. Undefined where the machine file gives no number. */
  count?: number;
  partNumber?: string;
  /** Its number in the figure. */
  item?: string;
  /** The kit that brings it, by id, where one does. */
  kit?: string;
  /** Comes with this new part, by id. */
  comesWith?: string;
  /** Needed only where an inspection or a measurement says so. */
  ifFound: boolean;
}

export interface KitEntry extends ListEntry {
  count: number;
  partNumber?: string;
  /** Names for readers of what it contains, with counts. */
  contains: { id: string; name: string; count?: number }[];
}

export interface FluidEntry extends ListEntry {
  /** How much the job puts in, all fills added; undefined where no step and no machine file says so. */
  amount?: Measure;
  /** How much the job is issued with, as its header says. */
  issued?: Measure;
  /** Which systems: `gearbox oil`. */
  into: string[];
  partNumber?: string;
  /** For topping up and the like: the amount is not known beforehand. */
  asNeeded: boolean;
}

export interface ConsumableEntry extends ListEntry {
  openTime?: Measure;
  curingTime?: Measure;
  partNumber?: string;
}

export interface JobTimes {
  /** As the header of the job states it. */
  stated?: Measure;
  /** The waits that the steps ask for, added up; in minutes. */
  waitingMinutes: number;
  waiting: Measure;
  /** Stated less waiting. Undefined where none is stated or the waits are longer. */
  working?: Measure;
  workingMinutes?: number;
  /** Where the waits differ from one variant to the next. */
  waitingByVariant: { when: When; minutes: number; text: string }[];
}

export interface JobLists {
  people?: number;
  /** The most people that one step asks for. */
  peopleAtOnce: number;
  skill?: string;
  times: JobTimes;
  protection: ListEntry[];
  conditions: string[];
  tools: ToolEntry[];
  newParts: PartEntry[];
  kits: KitEntry[];
  fluids: FluidEntry[];
  consumables: ConsumableEntry[];
}

/** What a variant or a choice may be. */
export interface Axis {
  id: string;
  /** The machine is built so, or the technician decides. */
  kind: 'variant' | 'choice';
  /** `supply` */
  label: string;
  values: { id: string; label: string }[];
}
