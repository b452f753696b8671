/** State words as questions: in which cases are these items `off`, `locked`, `isolated` … */
import type { Thing } from '../model/model.ts';
import {
  ASIDE,
  type Aspect,
  bit,
  CAPPED,
  CLEAN,
  CONNECTED,
  DISCONNECTED,
  DRAINED,
  FINAL,
  FULL,
  GONE,
  HAND,
  IN_PLACE,
  LOOSE,
  NO,
  not,
  OFF,
  OUT,
  PLACED,
  YES,
} from './aspects.ts';
import type { CaseSet } from './cases.ts';
import { normalPosition, type Position } from './positions.ts';
import type { Run } from './run.ts';

export interface Meaning {
  aspect: Aspect;
  mask: number;
  /** The value that makes it so, for `starts with`. */
  value: number;
}

/** What a state word means for a kind of thing; undefined where it means nothing. */
export function meaning(run: Run, thing: Thing, item: number, state: string): Meaning | undefined {
  const { type } = thing;
  const control = type === 'control' || type === 'isolator';
  switch (state) {
    case 'off':
      if (control && !run.model.seats[item]!.length) return position(run, item, state);
      if (type === 'fastener') return { aspect: 'place', mask: bit(OUT), value: OUT };
      if (type === 'connection') return { aspect: 'place', mask: not(CONNECTED), value: DISCONNECTED };
      if (type === 'tool') return { aspect: 'place', mask: not(IN_PLACE), value: 0 };
      if (type === 'system') return { aspect: 'live', mask: bit(YES), value: YES };
      return { aspect: 'place', mask: bit(OFF, GONE), value: OFF };
    case 'fitted':
      if (type === 'fastener') return { aspect: 'place', mask: not(OUT), value: FINAL };
      if (type === 'connection') return { aspect: 'place', mask: bit(CONNECTED), value: CONNECTED };
      if (type === 'tool') return { aspect: 'place', mask: bit(IN_PLACE), value: IN_PLACE };
      return { aspect: 'place', mask: PLACED, value: 0 };
    case 'aside':
      return { aspect: 'place', mask: bit(ASIDE), value: ASIDE };
    case 'loose':
      return { aspect: 'place', mask: bit(LOOSE, HAND), value: LOOSE };
    case 'hand-tight':
      return { aspect: 'place', mask: bit(HAND), value: HAND };
    case 'tight':
      return { aspect: 'place', mask: bit(FINAL), value: FINAL };
    case 'connected':
      return { aspect: 'place', mask: bit(CONNECTED), value: CONNECTED };
    case 'disconnected':
      return { aspect: 'place', mask: bit(DISCONNECTED, CAPPED), value: DISCONNECTED };
    case 'capped':
      return { aspect: 'place', mask: bit(CAPPED), value: CAPPED };
    case 'open':
      if (type === 'connection') return { aspect: 'place', mask: not(CONNECTED), value: DISCONNECTED };
      return position(run, item, state);
    case 'closed':
      if (type === 'connection') return { aspect: 'place', mask: bit(CONNECTED), value: CONNECTED };
      return position(run, item, state);
    case 'on':
      return control ? position(run, item, state) : { aspect: 'live', mask: bit(NO), value: NO };
    case 'locked':
      return { aspect: 'lock', mask: bit(YES), value: YES };
    case 'unlocked':
      return { aspect: 'lock', mask: bit(NO), value: NO };
    case 'full':
      return { aspect: 'fluid', mask: bit(FULL), value: FULL };
    case 'drained':
      return { aspect: 'fluid', mask: bit(DRAINED), value: DRAINED };
    case 'pressurised':
      return { aspect: 'pressure', mask: bit(NO), value: NO };
    case 'relieved':
      return { aspect: 'pressure', mask: bit(YES), value: YES };
    case 'hot':
      return { aspect: 'heat', mask: bit(NO), value: NO };
    case 'cool':
      return { aspect: 'heat', mask: bit(YES), value: YES };
    case 'live':
      return { aspect: 'live', mask: bit(NO), value: NO };
    case 'isolated':
      return { aspect: 'live', mask: bit(YES), value: YES };
    case 'safe':
      return { aspect: 'proved', mask: bit(YES), value: YES };
    case 'bled':
      return { aspect: 'bled', mask: bit(NO), value: NO };
    case 'clean':
      return { aspect: 'place', mask: bit(CLEAN), value: CLEAN };
    case 'dirty':
      return { aspect: 'place', mask: not(CLEAN), value: 0 };
    case 'supported':
    case 'raised':
      return { aspect: 'supported', mask: bit(YES), value: YES };
    case 'marked':
      return { aspect: 'marked', mask: bit(YES), value: YES };
    case 'new':
      return { aspect: 'fresh', mask: bit(YES), value: YES };
    default:
      return undefined;
  }
}

/** Of a control: its normal position is value 0. */
function position(run: Run, item: number, state: string): Meaning {
  const value = normalPosition(run, item, state as Position) === state ? NO : YES;
  return { aspect: 'moved', mask: bit(value), value };
}

/** The cases in which all of these items are so. */
export function stateCases(
  run: Run,
  thing: Thing,
  items: readonly number[],
  state: string,
  within: CaseSet,
): CaseSet {
  let set = within;
  for (const item of items) {
    const means = meaning(run, thing, item, state);
    if (means) set = run.cases.and(set, run.where(means.aspect, item, means.mask, set));
  }
  return set;
}
