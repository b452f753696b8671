/**
 * What is wrong with the notices of a procedure as they are written, with limits that its values break, and with words
 * for hazards that are slips. Nothing is carried out here; where a notice has to stand is the execution's
 * business. Facts `notice-incomplete`, `notice-gives-steps`, `note-gives-steps`, `limit-exceeded`, `unknown-name`.
 */
import type { Action, Notice } from '../../grammar/syntax/tree.ts';
import { HAZARDS } from '../../grammar/tokens/clauses.ts';
import { VERBS } from '../../grammar/tokens/verbs.ts';
import { activityWords, instructionsIn, noticeParts } from '../hazards/index.ts';
import { directionFaults } from './direction-faults.ts';
import type { Fact } from './facts.ts';
import { declaredLimitFaults, limitFaults } from './limit-faults.ts';
import type { Model, Thing } from './model.ts';
import { startsWithThing, thingsNamedIn } from './spoken-things.ts';
import type { Survey } from './survey.ts';
import { toleranceFaults } from './tolerance-faults.ts';
import { clothingSlips, declaredWordFaults, hazardSlip, wordSlip } from './word-slips.ts';

interface Where {
  readonly path: string;
}

export function hazardFaults(model: Model, survey: Survey, file: Where): Fact[] {
  const facts: Fact[] = clothingSlips(survey.procedure, file.path);
  const notices = survey.each('notices', [], (one) => (one.kind === 'notice' ? [one] : []));
  const done = new Done(model, survey);
  for (const notice of notices) facts.push(...noticeFaults(model, notice, file, done));
  facts.push(
    ...survey.each('limits and directions', [model], (one) =>
      one.kind === 'action'
        ? [...limitFaults(model, one, file.path), ...directionFaults(model, one, file.path)]
        : [],
    ),
  );
  facts.push(...toleranceFaults(model, survey, file.path));
  return facts;
}

let activities: readonly string[] | undefined;

/** Made when first asked for: most machines have no such words. */
function allActivities(): readonly string[] {
  activities ??= [...activityWords(VERBS.map(({ verb }) => verb))];
  return activities;
}

/** Facts about the declarations of a machine: `limit-exceeded`, `unknown-name`. */
export function declaredHazardFaults(model: Model): Fact[] {
  const facts: Fact[] = [...declaredLimitFaults(model), ...declaredWordFaults(model)];
  for (const thing of model.things) {
    for (const clause of thing.declaration.clauses) {
      if (clause.clause !== 'hazard') continue;
      for (const name of clause.hazards) facts.push(...hazardSlip(thing.place.file, name, HAZARDS));
      for (const name of clause.when)
        facts.push(...wordSlip(thing.place.file, name, 'activity', allActivities()));
    }
  }
  return facts;
}

function noticeFaults(model: Model, notice: Notice, file: Where, done: Done): Fact[] {
  const { signal, text, hazards, word } = notice;
  const facts: Fact[] = [];
  for (const name of hazards) {
    if (!done.declared.has(name.text)) facts.push(...hazardSlip(file.path, name, [...done.known]));
  }
  if (!text) return facts;
  const at = { file: file.path, start: text.start, end: text.end };
  if (signal === 'danger' || signal === 'warning' || signal === 'caution') {
    const { consequence, avoidance } = noticeParts(text.value, VERB_WORDS);
    const unnamed = hazards.length === 0 && signal !== 'caution';
    if (unnamed || !consequence || !avoidance) {
      facts.push({
        check: 'notice-incomplete',
        at: { file: file.path, start: word.start, end: word.end },
        words: {
          signal,
          ...(unnamed ? { hazard: 'missing' } : {}),
          ...(consequence ? {} : { consequence: 'missing' }),
          ...(avoidance ? {} : { avoidance: 'missing' }),
        },
      });
    }
  }
  const told = instructionsIn(text.value, STEPS, (rest) => startsWithThing(model, rest));
  for (const { verb, rest } of told) {
    const thing = thingsNamedIn(model, rest)[0];
    if (!thing) continue;
    // How a step that stands in the text is done may be said in the notice before it; a note never instructs.
    if (signal !== 'note' && done.does(verb, thing)) continue;
    const check = signal === 'note' ? 'note-gives-steps' : 'notice-gives-steps';
    facts.push({
      check,
      at,
      subject: { thing },
      words: {
        signal,
        verb,
        step: `${verb} ${thing.name}`,
        ...(done.does(verb, thing) ? { also: 'yes' } : {}),
      },
    });
    break;
  }
  return facts;
}

const hazardsKnown = new WeakMap<Model, ReadonlySet<string>>();

/** The hazards that a machine declares; gathered once for each. */
function hazardsOf(model: Model): ReadonlySet<string> {
  let hazards = hazardsKnown.get(model);
  if (!hazards) {
    hazards = new Set(
      model.things.flatMap(({ declaration }) =>
        declaration.clauses.flatMap((clause) =>
          clause.clause === 'hazard' ? clause.hazards.map(({ text }) => text) : [],
        ),
      ),
    );
    hazardsKnown.set(model, hazards);
  }
  return hazards;
}

/** The steps that the procedure has, by what is done to what. */
class Done {
  readonly declared: ReadonlySet<string>;
  readonly known: ReadonlySet<string>;
  private steps: ReadonlySet<string> | undefined;
  private readonly model: Model;
  private readonly survey: Survey;

  constructor(model: Model, survey: Survey) {
    this.declared = hazardsOf(model);
    this.known = new Set([...HAZARDS, ...this.declared]);
    this.model = model;
    this.survey = survey;
  }

  does(verb: string, thing: Thing): boolean {
    // Few notices speak of a step at all.
    this.steps ??= new Set(
      this.survey.distinct('what is done', [this.model], (statement) => {
        if (statement.kind === 'action') return doings(this.model, statement);
        // What a mirrored task does is written out from there.
        return statement.kind === 'reverse' || statement.kind === 'do' ? ['*'] : [];
      }),
    );
    return this.steps.has(`${familyOf(verb)} ${thing.name}`) || this.steps.has('*');
  }
}

function doings(model: Model, action: Action): string[] {
  const names = action.objects.map(({ name }) => name.text);
  for (const tail of action.tails) if ('refs' in tail) names.push(...tail.refs.map(({ name }) => name.text));
  return names.flatMap((name) => {
    // Draining at a plug, or relieving at a cock, is working it.
    const points = (model.byName.get(name)?.declaration.clauses ?? []).flatMap((clause) =>
      clause.clause === 'drained at' || clause.clause === 'relieved at' ? clause.refs : [],
    );
    return [
      `${familyOf(action.verb)} ${name}`,
      ...points.map((ref) => `${familyOf('open')} ${ref.name.text}`),
    ];
  });
}

/** Verbs that are one step for a reader. */
function familyOf(verb: string): string {
  return FAMILY.get(verb) ?? verb;
}

const FAMILIES: readonly (readonly string[])[] = [
  ['remove', 'unbolt', 'disconnect', 'loosen', 'open', 'switch off', 'move aside', 'discard'],
  ['fit', 'refit', 'bolt up', 'connect', 'tighten', 'close', 'switch on', 'move back', 'trial fit', 'secure'],
  ['relieve', 'drain', 'recover'],
  ['fill', 'top up'],
  ['support', 'raise', 'lower'],
  ['inspect', 'check', 'measure'],
];
const FAMILY = new Map(FAMILIES.flatMap((family) => family.map((verb) => [verb, family[0]!])));

/** Verbs whose sentence is a step, as they are written in sentences, with the verb of the language. */
const STEPS: ReadonlyMap<string, string> = new Map([
  ...VERBS.filter(
    ({ verb, on }) => on.length > 0 && !['move', 'record', 'send', 'choose', 'run', 'lower'].includes(verb),
  ).flatMap(({ verb, also }): [string, string][] => [
    [verb, verb],
    ...(also ?? []).map((one): [string, string] => [one, verb]),
  ]),
  ['torque', 'tighten'],
  ['replace', 'fit'],
  ['renew', 'fit'],
  ['take off', 'remove'],
  ['unscrew', 'remove'],
  ['apply', 'coat'],
]);

/** First words of verbs, for telling a command from a statement. */
const VERB_WORDS: ReadonlySet<string> = new Set(
  [...STEPS.keys(), ...VERBS.map(({ verb }) => verb)].map((phrase) => phrase.split(' ')[0]!),
);
