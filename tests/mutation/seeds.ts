/**
 * Faults put into right procedures on purpose, as text: a notice left out, moved, weakened or muted, a proof dropped, a
 * fluid swapped, a wait shortened, a tool left out of the list … Each names the checks that are about it. Whether it is
 * found, and whether it is a fault at all in this machine, is not known here.
 */
import { parse } from '../../grammar/parser/parse.ts';
import { itemsIn } from './seed-items.ts';
import { actionSeeds } from './seeds-of-actions.ts';
import { headerSeeds } from './seeds-of-headers.ts';
import { noticeSeeds } from './seeds-of-notices.ts';

export const SEED_KINDS = {
  'notice left out': ['caution-missing'],
  'notice moved behind its step': ['caution-late', 'caution-missing'],
  'notice weakened by two words': ['signal-word-weak'],
  'notice muted to a note': ['signal-word-weak', 'caution-missing', 'note-gives-steps'],
  'hazard word left out': ['notice-incomplete', 'caution-missing'],
  'avoidance left out': ['notice-incomplete'],
  'proof dropped': ['not-proved-safe'],
  'tester tried on one side': ['tester-not-proved'],
  'lock dropped': ['left-locked', 'done-twice', 'refitted-before-removed', 'contract-broken'],
  'hoist dropped': ['heavy-lift'],
  'fluid swapped': ['fluid-differs'],
  'compound swapped': ['fluid-differs'],
  'amount ten times as much': ['quantity-differs', 'supply-short'],
  'compound or lubricant dropped': ['compound-missing', 'lubricant-missing'],
  'cleaning dropped': ['face-not-cleaned'],
  'bleeding dropped': ['not-bled'],
  'filling dropped': ['left-drained', 'opened-full', 'contract-broken'],
  'wait cut to a tenth': ['filled-before-cured'],
  'time of the job cut to 1 min': ['time-differs'],
  'tool left out of the list': ['tool-unlisted', 'gauge-missing', 'wrench-out-of-range'],
  'tool listed that nothing uses': ['tool-unused'],
  'supply left out': ['supply-short'],
  'people cut to one': ['people-short', 'heavy-lift'],
} as const satisfies Record<string, readonly string[]>;

export type SeedKind = keyof typeof SEED_KINDS;

export interface Seed {
  readonly kind: SeedKind;
  readonly line: number;
  readonly what: string;
  readonly text: string;
}

/** Every seed in the procedures of a file; `machine` is the text that declares what they are about. */
export function seedsOf(source: string, machine: string): Seed[] {
  const { tree } = parse(source);
  const items = itemsIn(machine);
  return tree.items.flatMap((item) =>
    item.kind === 'procedure' && item.body
      ? [
          ...noticeSeeds(source, item.body),
          ...actionSeeds(source, item.body, items),
          ...headerSeeds(source, item, items),
        ]
      : [],
  );
}
