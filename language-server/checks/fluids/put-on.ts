/** What a joint is declared with, as the checks on compounds and lubricants say it. */
import type { Fact, Mentioned } from '../../model/facts.ts';
import { list } from '../../model/model.ts';
import { isPluralMention } from '../grammatical.ts';
import { typed } from '../speak.ts';

type PutOn = 'coated with' | 'lubricated with';

function declaredNames({ thing }: Mentioned, clause: PutOn): readonly string[] {
  return clause === 'coated with' ? thing.coatedWith : thing.lubricatedWith;
}

/** The thing that lacks it: a face under the subject, or the subject itself. */
function bare(fact: Fact): Mentioned | undefined {
  return fact.others?.[0] ?? fact.subject;
}

/** `its flange sealant`, by the name declared. */
export function onIt(fact: Fact, clause: PutOn): string {
  const one = bare(fact);
  return one
    ? `${isPluralMention(one) ? 'their' : 'its'} ${list(declaredNames(one, clause).map((name) => name.replaceAll('-', ' ')))}`
    : 'anything';
}

export function writeIt(fact: Fact, clause: PutOn, verb: string): string {
  const one = bare(fact);
  const names = one ? declaredNames(one, clause).join(', ') : '';
  const name = typed(one);
  if (one && one !== fact.others?.[0] && one.thing.type !== 'face')
    return `Write \`with ${names}\` at this step, or \`${verb} ${name} with ${names}\` before it.`;
  return `Write \`${verb} ${name} with ${names}\` before this step.`;
}
