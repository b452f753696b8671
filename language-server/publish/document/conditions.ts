/** Conditions as clauses: `there is water in the oil`, `the lid is off`, `the supply is single-phase`. */
import type { Condition } from '../../../grammar/syntax/tree.ts';
import { spoken } from '../../lists/combos.ts';
import type { Job } from '../../lists/job.ts';
import { isAre, phrase } from '../sentences/noun.ts';
import { nounOf } from '../sentences/nouns-of.ts';
import { patterned, text } from '../sentences/rich.ts';
import { inside } from '../sentences/tails.ts';
import { said } from '../sentences/texts.ts';
import type { Words } from '../words/words.ts';
import type { Rich } from './types.ts';

export function clauseOfCondition(
  condition: Condition | undefined,
  job: Job,
  words: Words,
  bound: ReadonlyMap<string, string> = new Map(),
): Rich {
  if (!condition) return [];
  switch (condition.kind) {
    case 'seen':
      return inside(said(condition.text, job.model, job.measures, bound));
    case 'state': {
      const noun = nounOf(job.model, condition.ref);
      return patterned(words.pattern(condition.negated ? 'if.is not' : 'if.is'), {
        what: phrase(noun),
        is: isAre([noun]),
        state: condition.state.text,
      });
    }
    case 'axis': {
      const choice = !job.model.variants.has(condition.axis.text);
      const values = condition.values.map(({ text: value }) => value).join(words.say('when.or'));
      const not = condition.negated ? 'not ' : '';
      const axis = spoken(condition.axis.text);
      return text(words.say(choice ? 'when.choice' : 'when.variant', { axis, values: `${not}${values}` }));
    }
    case 'and':
      return condition.parts.flatMap((part, index) => [
        ...(index > 0 ? text(words.say('if.and')) : []),
        ...clauseOfCondition(part, job, words, bound),
      ]);
  }
}
