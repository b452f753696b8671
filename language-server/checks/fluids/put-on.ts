/** What a joint is declared with, as the checks on compounds and lubricants say it. */
import type { Fact, Mentioned } from '../../model/facts.ts';
import { list, type Thing } from '../../model/model.ts';
import { isPluralMention } from '../grammatical.ts';
import { agree, capital, others, subject, typed } from '../speak.ts';

/** The thing that lacks it: a face under the subject, or the subject itself. */
function bare(fact: Fact): Mentioned {
  return fact.others![0] ?? fact.subject!;
}

/** What is said where `subject` goes on a face, or in, without what is declared. */
export function lacking(
  fact: Fact,
  declared: (thing: Thing) => readonly string[],
  verb: string,
): { message: string; help: string } {
  const one = bare(fact);
  const names = declared(one.thing);
  const itsOwn = `${isPluralMention(one) ? 'their' : 'its'} ${list(names.map((name) => name.replaceAll('-', ' ')))}`;
  const goes = `${capital(subject(fact))} ${agree(fact, 'goes', 'go')}`;
  const step = `${verb} ${typed(one)} with ${names.join(', ')}`;
  if (one === fact.subject)
    return {
      message: `${goes} in without ${itsOwn}.`,
      help: `Write \`with ${names.join(', ')}\` at this step, or \`${step}\` before it.`,
    };
  return {
    message: `${goes} on, and no step puts ${itsOwn} on ${others(fact)}.`,
    help: `Write \`${step}\` before this step.`,
  };
}
