/** The machine that a procedure is for, by its header. */
import type { Procedure } from '../../grammar/syntax/tree.ts';
import type { Fact } from '../model/facts.ts';
import { findMachine, type LoadedFile, unknownName } from '../model/names.ts';

/** The first machine after `for`; else facts `machine-missing` or `unknown-name`. */
export function machineFor(
  procedure: Procedure,
  path: string,
  visible: readonly LoadedFile[],
): { found: ReturnType<typeof findMachine>; facts: Fact[] } {
  const { name, headers } = procedure;
  const [ref] = headers.flatMap((one) => (one.header === 'for' ? one.refs : []));
  const known = visible.flatMap((one) => one.machines.flatMap((machine) => machine.name?.text ?? []));
  if (ref) {
    const found = findMachine(visible, ref.name.text);
    return { found, facts: found ? [] : [unknownName(path, ref.name, 'machine', known)] };
  }
  // What is printed elsewhere has no steps that could be checked; that a name is missing is a fault of the text.
  if (!name || headers.some((one) => one.header === 'elsewhere')) return { found: undefined, facts: [] };
  const at = { file: path, start: name.start, end: name.end };
  return {
    found: undefined,
    facts: [{ check: 'machine-missing', at, words: { known: known.join(', ') } }],
  };
}
