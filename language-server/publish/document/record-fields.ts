/** What is written down at a step: a reading, a word, a signature, the word of a second person. */
import type { Job } from '../../lists/job.ts';
import type { Act, ActContext } from '../sentences/act.ts';
import { headingOf } from '../sentences/heading.ts';
import { whatIsFound } from '../sentences/heading-finding.ts';
import { saidSentence } from '../sentences/texts.ts';
import type { PublishOptions } from '../words/options.ts';
import { capital } from '../words/words.ts';
import { outcomeLimits } from './readings.ts';
import { plainText, type RecordField } from './types.ts';

/** The fields of one step, without their place in the document. */
export function recordFieldsOf(
  context: ActContext,
  act: Act,
  job: Job,
  { secondPerson }: PublishOptions,
): Omit<RecordField, 'id' | 'step'>[] {
  const { words } = context;
  const { action } = act;
  const bare = (sentence: string) => sentence.replace(/\.$/, '');
  const found = plainText(whatIsFound(context, act));
  const fields: Omit<RecordField, 'id' | 'step'>[] = [];
  if (action.verb === 'measure') {
    const unit = action.outcomes
      .map((outcome) => outcomeLimits(outcome, job).unit)
      .find((one) => one !== undefined);
    fields.push({ kind: 'value', label: capital(found), ...(unit === undefined ? {} : { unit }) });
  }
  if (action.verb === 'record')
    fields.push({ kind: action.expression ? 'value' : 'text', label: capital(found) });
  if (action.verb === 'sign') {
    const what = bare(plainText(saidSentence(action.text, job.model, job.measures)));
    fields.push({ kind: 'signature', label: words.say('record.signature', { what }) });
  }
  if (secondPerson.includes(action.verb)) {
    const what = bare(plainText(headingOf({ ...context, introduce: () => false }, act)));
    fields.push({ kind: 'second-person', label: words.say('record.second', { what }) });
  }
  return fields;
}
