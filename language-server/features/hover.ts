/**
 * What a reader wants to know of what is under the pointer: of a thing, what it is, how it stands at this step
 * and which steps work on it; of a verb, what it asks and does; of a quantity, both units; of other names, what
 * they stand for.
 */
import type { Action, Procedure } from '../../grammar/syntax/tree.ts';
import { verbNamed } from '../../grammar/tokens/verbs.ts';
import { checkNamed } from '../checks/all.ts';
import { list, type Model, type Thing } from '../model/model.ts';
import type { SourceHost } from '../project/project.ts';
import { verbWords } from './complete-words.ts';
import { both, factsOf, headline } from './describe.ts';
import { actionsIn } from './inlay.ts';
import { meaningAt, occurrencesOf } from './meaning.ts';
import { statesOf } from './state-at.ts';
import { View } from './view.ts';

export interface Hover {
  start: number;
  end: number;
  /** Markdown. */
  text: string;
}

export function hoverAt(host: SourceHost, path: string, offset: number): Hover | undefined {
  return hoverIn(new View(host), path, offset);
}

export function hoverIn(view: View, path: string, offset: number): Hover | undefined {
  const file = view.file(path);
  if (!file) return undefined;
  const here = occurrencesOf(file).filter(({ start, end }) => start <= offset && offset <= end);
  const name = here[here.length - 1];
  const scene = view.sceneAt(path, offset);
  if (name?.role === 'check') {
    const check = checkNamed(name.text);
    return (
      check && {
        start: name.start,
        end: name.end,
        text: `**${check.name}** · ${check.severity}  \n${check.title}`,
      }
    );
  }
  const meaning = name && meaningAt(view, path, offset)?.meaning;
  if (name && scene && (meaning?.kind === 'thing' || (!meaning && scene.model.byName.has(name.text)))) {
    const thing = scene.model.byName.get(name.text);
    if (thing)
      return {
        start: name.start,
        end: name.end,
        text: thingWords(view, path, offset, scene.model, thing, scene.procedure),
      };
  }
  if (name && meaning) {
    const value = scene?.model.values.get(name.text);
    const expression = meaning.kind === 'value' ? value?.expression : undefined;
    const amount = expression?.kind === 'quantity' ? both(expression.quantity, scene!.model) : undefined;
    const title = value && meaning.kind === 'value' ? `${value.title} · ` : '';
    const rows = [`**${name.text}** · ${title}${meaning.kind}${amount ? ` · ${amount}` : ''}`];
    const values = scene?.model.variants.get(name.text)?.values;
    if (meaning.kind === 'variant' && values) rows.push(`one of ${list(values)}`);
    return { start: name.start, end: name.end, text: rows.join('  \n') };
  }
  const action = verbAt(file.procedures, offset);
  const verb = action && verbNamed(action.verb);
  return (
    verb && { start: action.word.start, end: action.word.end, text: `**${verb.verb}**  \n${verbWords(verb)}` }
  );
}

/** So many steps that work on a thing are named. */
const MOST_STEPS = 8;

function thingWords(
  view: View,
  path: string,
  offset: number,
  model: Model,
  thing: Thing,
  procedure: Procedure | undefined,
): string {
  const rows = [headline(thing).replace(thing.title, `**${thing.title}**`), ...factsOf(thing, model)];
  const file = view.file(path);
  if (procedure && file) {
    const groups = view.at(procedure, file, model, offset, statesOf);
    const states = groups.filter(({ things }) => things.some((one) => one.name === thing.name));
    rows.push(
      states.length > 0
        ? `before this step: ${list(states.map((group) => group.state))}`
        : 'before this step: as at the start',
    );
    const steps = stepsOn(view, procedure, path, model, thing);
    const shown = steps.slice(0, MOST_STEPS);
    const more = steps.length > shown.length ? ` and ${steps.length - shown.length} more` : '';
    if (shown.length > 0) rows.push(`worked on by ${shown.join(', ')}${more}`);
  }
  return rows.join('  \n');
}

/** ``line 12 `remove cover` ``: the steps of a procedure that work on a thing, in the order in which they are done. */
function stepsOn(view: View, procedure: Procedure, path: string, model: Model, thing: Thing): string[] {
  const file = view.file(path)!;
  const end = procedure.body ? procedure.body.end - (procedure.body.closed ? 1 : 0) : procedure.end;
  const last = thing.first + thing.positions.length;
  return view.at(procedure, file, model, end, (run) => {
    const seen = new Set<string>();
    for (const { action, file: where, touched } of run.steps.values()) {
      if (!touched.some((item) => item >= thing.first && item < last)) continue;
      const text = view.file(where)?.text ?? '';
      const line = text.slice(0, action.start).split('\n').length;
      const words = text.slice(action.start, action.end).split(/\n|"/)[0]!.trim();
      seen.add(where === path ? `line ${line} \`${words}\`` : `\`${words}\` in ${where.split('/').at(-1)}`);
    }
    return [...seen];
  });
}

function verbAt(procedures: readonly Procedure[], offset: number): Action | undefined {
  return procedures
    .filter(({ start, end }) => start <= offset && offset <= end)
    .flatMap(actionsIn)
    .find(({ word }) => word.start <= offset && offset <= word.end);
}
