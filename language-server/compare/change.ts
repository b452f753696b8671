/** One difference in meaning or wording between two states of a project. Plain data. */
import type { Place } from '../report/finding.ts';

export type ChangeKind =
  | 'added'
  | 'removed'
  | 'moved'
  | 'changed'
  /** A notice that warns less than before, or of less. */
  | 'weakened'
  | 'strengthened'
  /** Other words for the reader, the same work. */
  | 'reworded'
  /** Document number, issue, date, change record. */
  | 'record';

export interface Change {
  kind: ChangeKind;
  /** What it is a change of: `step`, `notice`, `fastener`, `tool` … */
  what: string;
  /** One sentence that stands alone. */
  message: string;
  before?: string;
  after?: string;
  /** Of a quantity, from the old one to the new one. */
  percent?: number;
  old?: Place;
  new?: Place;
  /** False where the same is still done: other words, other layout of the steps, a later issue. */
  meaning: boolean;
}

/** The changes of one machine or procedure, or of the findings. */
export interface Section {
  subject: 'machine' | 'procedure' | 'shared' | 'findings';
  /** Its name; of a pair with two names the new one. */
  name: string;
  title: string;
  /** The old name where it is another. */
  oldName?: string;
  changes: Change[];
}

export interface Comparison {
  sections: Section[];
  /** Whether anything means something else than before. */
  meaning: boolean;
}

/** `12 N·m → 14 N·m (+16.7 %)`: a share with its sign, rounded to three digits. */
export function percentWords(percent: number): string {
  const size = Math.abs(percent) >= 100 ? percent.toFixed(0) : percent.toFixed(1).replace(/\.0$/, '');
  return `${percent > 0 ? '+' : '−'}${size.replace('-', '')} %`;
}

/** Another title is other words for the same thing. */
export function titleChanges(old: Titled, now: Titled): Change[] {
  const [before, after] = [old.title?.value ?? '', now.title?.value ?? ''];
  if (before === after) return [];
  return [
    {
      kind: 'reworded',
      what: 'title',
      message: `It is now called "${after}".`,
      before,
      after,
      meaning: false,
    },
  ];
}

interface Titled {
  title?: { value: string } | undefined;
}
