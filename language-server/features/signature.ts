/** How the verb of the line is written: its forms, and which part of them is being typed. */
import type { Action } from '../../grammar/syntax/tree.ts';
import { type Verb, verbNamed } from '../../grammar/tokens/verbs.ts';
import { verbWords } from './complete-words.ts';
import type { View } from './view.ts';
import { TAIL_HELP } from './word-help.ts';

export interface Signature {
  label: string;
  /** Markdown. */
  documentation: string;
  parameters: { label: string; documentation: string }[];
  /** Which parameter is being typed; undefined where none is. */
  active?: number;
}

/** The verb of the action that an offset lies in or stands right behind, on the same line. */
export function signatureAt(view: View, path: string, offset: number): Signature | undefined {
  const file = view.file(path);
  const procedure = file?.procedures.find(({ start, end }) => start <= offset && offset <= end);
  if (!file || !procedure) return undefined;
  const before = innermostActions(procedure).filter(
    ({ word }) => word.end < offset && !file.text.slice(word.end, offset).includes('\n'),
  );
  const action = before.at(-1);
  const verb = action && verbNamed(action.verb);
  if (!action || !verb) return undefined;
  const { label, parameters } = formOf(verb);
  const tail = action.tails.find(({ start, end }) => start <= offset && offset <= end + 1);
  const what = tail ? parameters.findIndex((one) => one.label.includes(tail.tail)) : 0;
  return {
    label,
    documentation: verbWords(verb),
    parameters,
    ...(what >= 0 && parameters.length > 0 ? { active: what } : {}),
  };
}

function formOf(verb: Verb): { label: string; parameters: Signature['parameters'] } {
  const parameters: Signature['parameters'] = [];
  const things = verb.on.length > 0 ? verb.on.map((kind) => kind.toUpperCase()).join(' | ') : '';
  if (things) parameters.push({ label: things, documentation: `What it acts on: ${verb.on.join(', ')}.` });
  for (const tail of TAILS[verb.verb] ?? ['with']) {
    const help = TAIL_HELP[tail];
    if (help) parameters.push({ label: `[${help.form}]`, documentation: `${help.says}.` });
  }
  const topic = verb.topic ? ' WHAT of' : '';
  const fresh = verb.fresh ? ' [new | kit]' : '';
  const closing = verb.closing ? ` ${verb.closing}` : '';
  const [object, ...tails] = things ? parameters : [undefined, ...parameters];
  const middle = object ? ` ${object.label}` : '';
  const rest = tails.map((one) => ` ${one!.label}`).join('');
  return { label: `${verb.verb}${fresh}${topic}${middle}${closing}${rest}`, parameters };
}

const TAILS: Readonly<Record<string, readonly string[]>> = {
  remove: ['and discard', 'with'],
  unbolt: ['and discard', 'with'],
  refit: ['by hand', 'with'],
  fit: ['by hand', 'in order', 'with'],
  loosen: ['in order', 'holding', 'with'],
  tighten: ['stage', 'pass', 'to', 'in order', 'until', 'holding', 'with'],
  measure: ['between', 'with', 'as'],
  choose: ['from', 'by'],
  inspect: ['for', 'with'],
  check: ['at', 'with'],
  drain: ['into', 'with'],
  evacuate: ['to', 'for', 'with'],
  inflate: ['to', 'with'],
  pressurise: ['to', 'with'],
  'top up': ['to', 'with'],
  bleed: ['at', 'until', 'with'],
  adjust: ['to', 'with'],
  send: ['for'],
  wait: [],
  sign: [],
  run: ['for', 'expect'],
};

function innermostActions(procedure: { body?: unknown }): Action[] {
  const actions: Action[] = [];
  const visit = (value: unknown): void => {
    if (Array.isArray(value)) for (const one of value) visit(one);
    else if (typeof value === 'object' && value !== null) {
      if ((value as { kind?: string }).kind === 'action') actions.push(value as Action);
      for (const one of Object.values(value)) visit(one);
    }
  };
  visit(procedure.body);
  return actions.sort((a, b) => a.start - b.start);
}
