/** What stands before the steps: what the procedure is for, to what it applies, how the machine stands at both ends. */
import type { StateClaim } from '../../../grammar/syntax/tree.ts';
import type { Job } from '../../lists/job.ts';
import { headerOf } from '../../lists/lists.ts';
import { findMachine, findProcedure } from '../../model/names.ts';
import { isAre, phrase } from '../sentences/noun.ts';
import { nounOf } from '../sentences/nouns-of.ts';
import { listed, patterned, sentence, text } from '../sentences/rich.ts';
import type { Words } from '../words/words.ts';
import type { ProcedureDocument, Rich } from './types.ts';
import { plainText } from './types.ts';

export function purposeOf(title: string, words: Words): string {
  const [first = ''] = title.split(' ');
  if (!VERBS.has(first.toLowerCase())) return words.say('purpose.title', { title });
  return words.say('purpose', { what: title.charAt(0).toLowerCase() + title.slice(1) });
}

/** Verbs that titles of procedures begin with. */
const VERBS: ReadonlySet<string> = new Set(
  `renew overhaul replace service repair check make take put strip build change clean adjust remove refit fit install
  reinstall bleed drain fill inspect measure shut start stop open close set test tighten evacuate charge lock prepare
  assemble dismantle align connect disconnect convert move clear lubricate grease rebuild exchange`.split(
    /\s+/,
  ),
);

export function appliesTo(job: Job, words: Words): ProcedureDocument['appliesTo'] {
  const { model, combinations, within } = job;
  const machines = machinesOf(job);
  const only = combinations.when(within);
  const first = only
    ? words.say('applies.only', { machine: model.title, when: only.sentence })
    : words.say('applies.all', { machine: model.title });
  const others = machines.slice(1).map(({ title }) => title);
  return {
    sentence:
      others.length > 0 ? words.say('applies.also', { sentence: first, others: others.join(', ') }) : first,
    axes: [...combinations.axes],
    combinations: combinations.selectionsOf(within),
    serialNumbers: job.procedure.headers.flatMap((header) =>
      header.header === 'serial numbers' && header.text ? [header.text.value] : [],
    ),
  };
}

export function machinesOf({ procedure, visible }: Job): { id: string; title: string }[] {
  return (headerOf(procedure, 'for')?.refs ?? []).map(({ name }) => ({
    id: name.text,
    title: findMachine(visible, name.text)?.machine.title?.value ?? name.text.replaceAll('-', ' '),
  }));
}

export function statesAt(job: Job, words: Words, end: 'starts with' | 'ends with'): Rich[] {
  const claims = headerOf(job.procedure, end)?.claims ?? [];
  const sentences = claims.flatMap((claim) => claimSentence(claim, job, words));
  const where = end === 'starts with' ? headerOf(job.procedure, 'starts where')?.ref : undefined;
  if (!where) return sentences;
  const found = findProcedure(job.visible, where.name.text);
  const title = found?.procedure.title?.value ?? where.name.text.replaceAll('-', ' ');
  const link: Rich = [{ kind: 'link', text: title, target: where.name.text, to: 'procedure' }];
  return [patterned(words.pattern('state.starts where'), { title: link }), ...sentences];
}

function claimSentence(claim: StateClaim, job: Job, words: Words): Rich[] {
  const nouns = claim.refs.map((ref) => nounOf(job.model, ref));
  const what = listed(nouns.map((noun) => phrase(noun)));
  const state = claim.state?.text ?? '';
  if (state === '') return [];
  const key =
    claim.scope === 'everything' ? 'state.everything' : claim.scope === 'all of' ? 'state.all' : 'state.is';
  const is = isAre(nouns);
  const line = sentence(patterned(words.pattern(key).replace('{What}', '{what}'), { what, is, state }));
  if (claim.except.length === 0) return [line];
  const except = listed(claim.except.map((ref) => phrase(nounOf(job.model, ref))));
  const told = words.say('state.except', { sentence: plainText(line), what: plainText(except) });
  return [text(told)];
}
