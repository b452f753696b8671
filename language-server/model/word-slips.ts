/**
 * Words that are slips of the ones the language knows: hazards, what they are met in, normal positions, what secures a
 * fastener, protective clothing. Fact `unknown-name`. Where other words may stand, only a near miss is told.
 */
import type { Name, Procedure } from '../../grammar/syntax/tree.ts';
import { CLOTHING, HAZARD_SYNONYMS, POSITIONS, SECURING } from '../../grammar/tokens/clauses.ts';
import type { Fact } from './facts.ts';
import type { Model } from './model.ts';
import { nearest, unknownName } from './names.ts';

/** A word that is nearly one of those known. Any other word is the author's own. */
export function wordSlip(file: string, name: Name, what: string, known: readonly string[]): Fact[] {
  if (known.includes(name.text)) return [];
  const near = nearest(name.text, known);
  if (near === undefined || Math.abs(near.length - name.text.length) > 1) return [];
  return [unknownName(file, name, what, known)];
}

/** The same of a hazard; a word that says the same as a known one is told with it. */
export function hazardSlip(file: string, name: Name, known: readonly string[]): Fact[] {
  const meant = HAZARD_SYNONYMS[name.text];
  if (meant === undefined || known.includes(name.text)) return wordSlip(file, name, 'hazard', known);
  const at = { file, start: name.start, end: name.end };
  return [
    {
      check: 'unknown-name',
      at,
      words: { name: name.text, what: 'hazard', near: meant },
      mends: [{ title: `Write ${meant}`, at, text: meant }],
    },
  ];
}

/** Words of a machine file: `normally …` and `secured by …` take no others. */
export function declaredWordFaults(model: Model): Fact[] {
  const facts: Fact[] = [];
  for (const thing of model.things) {
    const { file } = thing.place;
    for (const clause of thing.declaration.clauses) {
      if (clause.clause === 'normally' && clause.state) {
        const word = clause.state;
        if (!(POSITIONS as readonly string[]).includes(word.text))
          facts.push(unknownName(file, word, 'normal position', POSITIONS));
      } else if (clause.clause === 'secured by') {
        for (const { name } of clause.refs) {
          if (model.byName.has(name.text) || (SECURING as readonly string[]).includes(name.text)) continue;
          const known = [...SECURING, ...model.byName.keys()];
          facts.push(unknownName(file, name, 'way of securing', known));
        }
      }
    }
  }
  return facts;
}

/** `wear glovs`. */
export function clothingSlips(procedure: Procedure, file: string): Fact[] {
  return procedure.headers.flatMap((header) =>
    header.header === 'wear'
      ? header.names.flatMap((name) => wordSlip(file, name, 'protective clothing', CLOTHING))
      : [],
  );
}
