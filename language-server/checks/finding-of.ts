/** The finding of a check that has no fact of the text behind it: about a file as a whole, or about the tool. */

import type { Finding, Place } from '../report/finding.ts';
import type { Check } from './check.ts';

export function findingOf(check: Check, at: Place, words: Readonly<Record<string, string>>): Finding {
  const { name, severity } = check;
  return { ...at, check: name, severity, ...check.says({ check: name, at, words }), related: [] };
}
