/**
 * A fact is what an analysis found, without words for the reader: which check it belongs to, where, about
 * what, caused by which steps, in which cases. The check's own file turns it into one sentence.
 */
import type { CaseSet } from '../execution/cases.ts';
import type { Place } from '../report/finding.ts';
import type { Thing } from './model.ts';

export interface Mentioned {
  thing: Thing;
  /** The items meant; all of the thing's where it is missing. */
  items?: number[];
}

export interface Fact {
  check: string;
  /** The check whose sentence tells the fault itself, where `check` is about the loop or branch it comes from. */
  inner?: string;
  at: Place;
  subject?: Mentioned;
  /** What stands in the way, is missing, or is meant too. */
  others?: Mentioned[];
  /** Earlier steps (or declarations) that made it so, in order, each with what it did; or said in a sentence of its own. */
  story?: { at: Place; what: Story; thing?: Thing; says?: string }[];
  cases?: CaseSet;
  /** All cases in which work had not ended there: a fault in all of these needs no case named. */
  every?: CaseSet;
  /** Names, values and words for the sentence. */
  words?: Readonly<Record<string, string>>;
  /** Replacement texts that would mend it for certain, each with what it does in words. */
  mends?: { title: string; at: Place; text: string }[];
}

/** What an earlier step did, for "taken off here". */
export type Story =
  | 'taken off'
  | 'put back'
  | 'discarded'
  | 'moved aside'
  | 'moved back'
  | 'fitted on trial'
  | 'fitted by hand'
  | 'loosened'
  | 'tightened'
  | 'disconnected'
  | 'connected'
  | 'capped'
  | 'opened'
  | 'closed'
  | 'switched on'
  | 'switched off'
  | 'locked'
  | 'unlocked'
  | 'isolated'
  | 'restored'
  | 'drained'
  | 'filled'
  | 'relieved'
  | 'pressurised'
  | 'heated'
  | 'cooled'
  | 'proved'
  | 'supported'
  | 'lowered'
  | 'put in place'
  | 'bypassed'
  | 'marked'
  | 'cleaned'
  | 'coated'
  | 'measured'
  | 'disturbed'
  | 'worked on'
  | 'named'
  | 'declared'
  | 'ruled';
