/**
 * Which findings a house may set the severity of and an author may waive: not those that say that a text was not
 * read, or not read as it was meant, nor those about waivers themselves. What was not read was not checked, and a
 * waiver must not hide that.
 */
import { ALL_CHECKS } from './all.ts';
import type { Check } from './check.ts';

const NEVER: ReadonlySet<string> = new Set(['file-missing', 'use-cycle', 'undecided']);

/** Why a finding of this check stands whatever anyone says; undefined where it may be set and waived. */
export function fixedBecause(name: string): string | undefined {
  const check = ALL_CHECKS.find((one) => one.name === name);
  return check ? fixed(check) : 'it is no finding about the work';
}

function fixed(check: Check): string | undefined {
  const { name } = check;
  if (check.group === 'Text') return 'it says that the text could not be read as it stands';
  if (NEVER.has(name)) return 'it says that a part of the work was not checked';
  if (name.startsWith('waiver-')) return 'it is about waivers themselves';
  return undefined;
}

/** Names of the checks that may be set and waived, in the order of the list. */
export const SETTABLE_CHECKS: readonly string[] = ALL_CHECKS.filter(
  (check) => fixed(check) === undefined,
).map(({ name }) => name);
