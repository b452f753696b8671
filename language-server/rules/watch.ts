/**
 * The rules of the house, looked at while a procedure is carried out: which sentences a step concerns, and the facts
 * `rule-broken`. Only sentences about things that the step names or changes are looked at, so that a thousand bolts
 * cost nothing while nobody touches them.
 */
import type { Action, Procedure } from '../../grammar/syntax/tree.ts';
import { type CaseSet, NONE } from '../execution/cases.ts';
import type { Run } from '../execution/run.ts';
import type { Watcher } from '../execution/watch.ts';
import { placeOf, storyOf, withoutRounds } from '../execution/watch-place.ts';
import type { Fact } from '../model/facts.ts';
import type { Model, Thing } from '../model/model.ts';
import type { Place } from '../report/finding.ts';
import { AfterCourse } from './after.ts';
import { BeforeCourse } from './before.ts';
import { compile, compiled, type Demand, type Instance } from './compile.ts';
import type { Course, Tell, Where } from './course.ts';
import { type Doing, doingOf } from './doings.ts';
import { DuringCourse } from './during.ts';
import { demandWords } from './words.ts';

/** The watcher, or none where there are no rules. `own`: rules beside those that the machine knows. */
export function ruleWatch(run: Run, procedure: Procedure, file: string, own: Model['rules'] = []): Watcher[] {
  const { model } = run;
  const instances = compiled(model).instances.concat(own.length > 0 ? compile(model, own).instances : []);
  return instances.length > 0 ? [new RuleWatch(run, procedure, file, instances)] : [];
}

/** A fact, with all that sets it off and all that is asked for. */
interface Told {
  readonly fact: Fact;
  trigger: Demand | undefined;
  demand: Demand;
}

/** The same asked of more things, in the order of the machine. */
function withItems(demand: Demand, more: readonly number[] = []): Demand {
  return { ...demand, items: [...new Set([...demand.items, ...more])].sort((a, b) => a - b) };
}

const NOTHING: Doing['done'] = new Map();

export class RuleWatch implements Watcher {
  private readonly run: Run;
  private readonly procedure: Procedure;
  private readonly file: string;
  private readonly courses: Course[];
  /** `verb item`, or the verb alone where a sentence names no thing -> sentences about it. */
  private readonly byDoing = new Map<string, Course[]>();
  /** Item -> sentences about its state. */
  private readonly byState = new Map<number, Course[]>();
  private readonly changed = new Set<number>();
  private doing: Doing | undefined;
  private last: Doing | undefined;
  private concerned = new Set<Course>();
  private readonly facts = new Map<string, Told>();

  constructor(run: Run, procedure: Procedure, file: string, instances: readonly Instance[]) {
    this.run = run;
    this.procedure = procedure;
    this.file = file;
    this.courses = instances.map((instance) => courseOf(run, instance, this.tell));
    for (const course of this.courses) {
      for (const demand of [course.instance.trigger, course.instance.demand])
        if (demand) this.index(course, demand);
    }
    run.state.changed = this.changed;
  }

  begun(): void {
    for (const course of this.courses) {
      course.forget();
      course.after(undefined);
    }
    this.facts.clear();
    this.changed.clear();
    this.last = undefined;
  }

  beforeEach(action: Action, file: string, items: readonly number[]): void {
    // What was changed since by no step (taken to be so, or done elsewhere) is how things stand now.
    this.settle(this.last);
    this.doing = doingOf(this.run.model, { action, file, used: this.run.usedAt !== undefined }, items);
    this.concerned = new Set();
    for (const [verb, done] of this.doing.done) {
      this.concern(this.byDoing.get(verb));
      for (const item of done) this.concern(this.byDoing.get(`${verb} ${item}`));
    }
    for (const course of this.concerned) course.before(this.doing);
  }

  afterEach(): void {
    this.settle(this.doing);
    this.last = this.doing;
    this.doing = undefined;
  }

  printedElsewhere(): void {
    const step = this.run.steps.present;
    if (step)
      this.last = {
        action: step.action,
        file: step.file,
        used: this.run.usedAt !== undefined,
        done: NOTHING,
      };
    this.settle(this.last);
    for (const course of this.courses) course.elsewhere();
  }

  finish(finished: CaseSet): void {
    if (this.run.lost) return;
    for (const course of this.courses) course.finish(finished);
  }

  private settle(doing: Doing | undefined): void {
    const { items } = this.run.model;
    for (const variable of this.changed) this.concern(this.byState.get(variable % items));
    this.changed.clear();
    for (const course of this.concerned) course.after(doing);
    this.concerned = new Set();
  }

  private concern(courses: readonly Course[] | undefined): void {
    for (const course of courses ?? []) this.concerned.add(course);
  }

  private index(course: Course, demand: Demand): void {
    const into = <Key>(map: Map<Key, Course[]>, key: Key) => {
      const list = map.get(key);
      if (list) list.push(course);
      else map.set(key, [course]);
    };
    if (demand.kind === 'state') for (const item of demand.items) into(this.byState, item);
    else if (demand.items.length === 0) into(this.byDoing, demand.verb);
    else for (const item of demand.items) into(this.byDoing, `${demand.verb} ${item}`);
  }

  private readonly tell: Tell = (instance, where, set, since) => {
    const { run } = this;
    const cases = withoutRounds(run, set);
    const demand = instance.require ? instance.demand : doneOf(instance.demand, where);
    const about = (instance.trigger ?? demand).items[0] ?? demand.items[0];
    const subject = about === undefined ? undefined : run.thing(about);
    if (cases === NONE || run.lost || this.isUndecided(instance)) return;
    const at = this.placeOf(where, subject);
    // A used procedure that breaks the rule by itself is told of there.
    if (at === undefined) return;
    const { rule, body } = instance;
    const key = `${body.start} ${instance.file} ${at.file} ${at.start} ${subject?.id}`;
    const known = this.facts.get(key);
    if (known) {
      const { fact, trigger } = known;
      fact.cases = run.cases.or(fact.cases ?? NONE, cases);
      if (about !== undefined && !fact.subject?.items?.includes(about)) fact.subject?.items?.push(about);
      // Each thing sets the sentence off by itself; they are told of together.
      known.trigger = trigger && withItems(trigger, instance.trigger?.items);
      known.demand = withItems(known.demand, demand.items);
      fact.words = { ...fact.words, ...this.wordsOf(known, instance) };
      return;
    }
    const name = rule.name ?? rule;
    const doing = where === 'start' || where === 'end' ? undefined : where;
    const fact: Fact = {
      check: 'rule-broken',
      at,
      ...(subject && about !== undefined ? { subject: { thing: subject, items: [about] } } : {}),
      story: [
        ...since
          .filter((one) => one !== doing)
          .map((one) => ({
            at: placeOf(one),
            what: storyOf(one.action.verb),
            ...(subject ? { thing: this.thingIn(one, subject) } : {}),
          })),
        { at: { file: instance.file, start: name.start, end: name.end }, what: 'ruled' as const },
      ],
      cases,
      every: run.working,
      words: {
        rule: rule.name?.text ?? '',
        body: String(rule.bodies.indexOf(body)),
        sentence: rule.title?.value ?? '',
        scope: instance.scope,
        ask: instance.require ? 'require' : 'never',
        where: typeof where === 'string' ? where : 'step',
        ...this.wordsOf({ trigger: instance.trigger, demand }, instance),
        form: `${instance.trigger?.kind ?? 'none'} ${instance.demand.kind}`,
      },
    };
    this.facts.set(key, { fact, trigger: instance.trigger, demand });
    run.facts.push(fact);
  };

  private wordsOf(
    { trigger, demand }: Pick<Told, 'trigger' | 'demand'>,
    { require }: Instance,
  ): { trigger: string; demand: string } {
    const { model } = this.run;
    return {
      trigger: trigger ? demandWords(model, trigger) : '',
      demand: demandWords(model, demand, require ? 'and' : 'or'),
    };
  }

  private thingIn({ action }: Doing, otherwise: Thing): Thing {
    const name = action.objects[0]?.name.text;
    return (name === undefined ? undefined : this.run.model.byName.get(name)) ?? otherwise;
  }

  private isUndecided({ trigger, demand }: Instance): boolean {
    const { run } = this;
    return [...(trigger?.items ?? []), ...demand.items].some((item) => run.undecided.has(run.thing(item)));
  }

  private placeOf(where: Where, subject: Thing | undefined): Place | undefined {
    const { procedure, file, run } = this;
    if (where === 'start') return run.before ?? nameOf(procedure, file);
    if (where === 'end') {
      const end = procedure.body?.end ?? procedure.end;
      return { file, start: end - 1, end };
    }
    if (run.usedAt) return run.usedAt;
    // Told at the end about a step of a used procedure: that one is told of on its own.
    return where.used ? undefined : placeOf(where, subject);
  }
}

/** What is never done, with those of its things that the step did it to. */
function doneOf(demand: Demand, where: Where): Demand {
  if (demand.kind === 'state' || typeof where === 'string') return demand;
  const done = where.done.get(demand.verb);
  return { ...demand, items: demand.items.filter((item) => done?.has(item)) };
}

function nameOf(procedure: Procedure, file: string): Place {
  const { start, end } = procedure.name ?? procedure;
  return { file, start, end };
}

function courseOf(run: Run, instance: Instance, tell: Tell): Course {
  switch (instance.scope) {
    case 'before':
      return new BeforeCourse(run, instance, tell);
    case 'after':
      return new AfterCourse(run, instance, tell);
    default:
      return new DuringCourse(run, instance, tell);
  }
}
