/** What the parts of a flow are called: ids that stay when other steps change, titles of rounds, where steps come from. */
import type { Written } from '../../lists/written.ts';
import type { Model } from '../../model/model.ts';
import { phrase } from '../sentences/noun.ts';
import { nounOf } from '../sentences/nouns-of.ts';
import { patterned, text } from '../sentences/rich.ts';
import { capital, type Words } from '../words/words.ts';
import { type ProcedureLink, plainText, type Rich } from './types.ts';

/** Ids of one document. */
export class Ids {
  private readonly used = new Set<string>();

  /** Made of names: `strip.remove-cover-bolts`; a second one of the same name gets a number. */
  of(parent: string, name: string): string {
    const slug = name
      .toLowerCase()
      .replace(/[^\p{L}\p{N}]+/gu, '-')
      .replace(/^-+|-+$/g, '');
    const own = parent === '' ? (/^\p{L}/u.test(slug) ? slug : `s-${slug}`) : `${parent}.${slug || 'item'}`;
    let id = own;
    for (let count = 2; this.used.has(id); count++) id = `${own}-${count}`;
    this.used.add(id);
    return id;
  }
}

/** Title of one round of a `for each`. */
export function eachTitle(
  { ref, value, variable }: Extract<Written, { kind: 'each' }>,
  model: Model,
): string {
  if (ref && model.byName.has(ref.name.text)) {
    const at = { ...ref, positions: [{ start: ref.start, end: ref.end, from: value }] };
    return capital(plainText(phrase(nounOf(model, at))));
  }
  const name = variable.length > 1 ? `${variable.replaceAll('-', ' ')} ${value}` : value;
  return capital(name.replaceAll('-', ' '));
}

/** From which procedure steps come, with its number and issue. */
export function procedureNote(link: ProcedureLink, words: Words): Rich {
  const number =
    link.number === undefined
      ? ''
      : link.issue === undefined
        ? words.say('group.procedure.number only', { number: link.number })
        : words.say('group.procedure.number', { number: link.number, issue: link.issue });
  const title: Rich = [{ kind: 'link', text: link.title, target: link.id, to: 'procedure' }];
  const from = patterned(words.pattern('group.procedure'), { title, number });
  const elsewhere =
    link.elsewhere === undefined ? '' : ` ${words.say('group.elsewhere', { where: link.elsewhere })}`;
  return [...from, ...text(elsewhere)];
}
