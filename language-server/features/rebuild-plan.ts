/**
 * How a part comes off its machine and goes back: steps in an order that the machine allows. Each step is
 * tried on the state; what it would be blamed for says what comes before it. Gives lines of the language, or
 * what stood in the way.
 */
import type { RulePattern } from '../../grammar/syntax/tree.ts';
import { perform } from '../execution/actions/perform.ts';
import { NONE } from '../execution/cases.ts';
import type { Run } from '../execution/run.ts';
import type { Fact } from '../model/facts.ts';
import { itemsOf } from '../model/items.ts';
import type { Model, Thing } from '../model/model.ts';
import { actionOf, lineOf, meets, type Step } from './rebuild-steps.ts';

export interface Plan {
  strip: string[];
  rebuild: string[];
}

/** Steps of a plan at the most, and how deep what comes before may go. */
const MOST_STEPS = 200;
const MOST_DEEP = 30;

/** `run` stands at the start; it is moved on. Where no way was found: what stood in it. */
export function planFor(run: Run, part: Thing, file: string): Plan | { stuck: string } {
  const planner = new Planner(run, file);
  if (!planner.takeOff(part, 0)) return { stuck: planner.stuck };
  const strip = planner.done;
  planner.done = [];
  if (!planner.back(strip)) return { stuck: planner.stuck };
  return { strip: strip.map(lineOf), rebuild: planner.done.map(lineOf) };
}

class Planner {
  done: Step[] = [];
  /** The step that could not be reached, and the check that says why. */
  stuck = '';
  private readonly owed = new Map<string, Step>();
  private readonly run: Run;
  private readonly model: Model;
  private readonly file: string;
  private count = 0;

  constructor(run: Run, file: string) {
    this.run = run;
    this.model = run.model;
    this.file = file;
  }

  // ------------------------------------------------------------ off

  takeOff(thing: Thing, deep: number): boolean {
    if (thing.fixed) return false;
    switch (thing.type) {
      case 'connection':
        return this.reach({ verb: 'disconnect', thing }, deep);
      case 'part':
      case 'control':
      case 'isolator': {
        const held = thing.type === 'part' && this.model.heldBy[thing.first]!.length > 0;
        // What is for one use only is thrown away when it comes off.
        const discard = thing.singleUse;
        const step: Step = { verb: held ? 'unbolt' : 'remove', thing, discard };
        return this.reach(step, deep) || (held && this.reach({ ...step, verb: 'remove' }, deep));
      }
      default:
        return this.reach({ verb: 'remove', thing, discard: thing.singleUse }, deep);
    }
  }

  /** Does a step, and before it what it would be blamed for. */
  private reach(step: Step, deep: number): boolean {
    if (deep > MOST_DEEP) return false;
    if (!this.demandedBefore(step, deep + 1)) return false;
    const tried = new Set<string>();
    for (;;) {
      const blames = this.blames(step, false);
      if (blames.length === 0) break;
      const next = blames.find((fact) => !tried.has(keyOf(fact)));
      if (!next || this.done.length > MOST_STEPS) return this.fail(step, next ?? blames[0]!);
      tried.add(keyOf(next));
      if (!this.prepare(next, step, deep + 1)) return this.fail(step, next);
    }
    this.blames(step, true);
    this.done.push(step);
    this.note(step);
    return true;
  }

  // ------------------------------------------------------------ rules of the machine

  /** What a rule asks for before the step: a system dead, a tool in place, a part off. */
  private demandedBefore(step: Step, deep: number): boolean {
    for (const { rule } of this.model.rules) {
      for (const { scope, trigger, demand, demanded } of rule.bodies) {
        if (scope !== 'before' || demand !== 'require' || trigger?.kind !== 'event') continue;
        if (!meets(trigger, step, this.model) || demanded?.kind !== 'state' || demanded.negated) continue;
        const thing = this.named(demanded);
        if (!thing) continue;
        switch (demanded.state.text) {
          case 'isolated':
          case 'relieved':
          case 'cool':
          case 'safe':
            if (!this.makeSafe(thing, deep)) return false;
            break;
          case 'fitted':
            if (thing.type === 'tool' && !this.inPlace(thing) && !this.reach({ verb: 'fit', thing }, deep))
              return false;
            break;
          case 'off':
            if (!this.isAway(thing) && !this.takeOff(thing, deep)) return false;
            break;
          default:
        }
      }
    }
    return true;
  }

  /** What a rule asks for after the step is owed until the end. */
  private note(step: Step): void {
    for (const { rule } of this.model.rules) {
      for (const { scope, trigger, demand, demanded } of rule.bodies) {
        if (scope !== 'after' || demand !== 'require' || trigger?.kind !== 'event') continue;
        if (!meets(trigger, step, this.model) || demanded?.kind !== 'event') continue;
        const thing = this.named(demanded);
        const times = demanded.times;
        const { amounts } = demanded.quantity ?? {};
        const amount = amounts?.map(({ number, unit }) => `${number} ${unit?.text ?? ''}`.trim())[0];
        if (thing && !times)
          this.owed.set(`${demanded.verb.text} ${thing.name}`, {
            verb: demanded.verb.text,
            thing,
            ...(amount ? { amount } : {}),
          });
      }
    }
  }

  private named(pattern: RulePattern): Thing | undefined {
    const [selector] = pattern.selectors;
    return selector?.kind === 'named' ? this.model.byName.get(selector.ref.name.text) : undefined;
  }

  private inPlace(tool: Thing): boolean {
    return this.run.where('place', tool.first, 2, this.run.within) !== NONE;
  }

  private fail(step: Step, fact: Fact): false {
    // The innermost reason is the one that tells.
    if (this.stuck === '') this.stuck = `\`${lineOf(step)}\`: ${fact.inner ?? fact.check}`;
    return false;
  }

  /** What must come before, for one blame. */
  private prepare(fact: Fact, step: Step, deep: number): boolean {
    const others = (fact.others ?? []).map(({ thing }) => thing);
    switch (fact.inner ?? fact.check) {
      case 'covered':
      case 'still-held':
      case 'still-connected':
        return others.every((other) => this.isAway(other) || this.takeOff(other, deep));
      case 'not-supported':
        return (others.length > 0 ? others : [step.thing]).every((other) => this.support(other, deep));
      case 'not-made-safe':
        return others.every((system) => this.makeSafe(system, deep));
      case 'not-proved-safe':
        return others.every((system) => this.prove(system, deep));
      case 'not-marked':
        return this.reach({ verb: 'mark', thing: fact.subject?.thing ?? step.thing }, deep);
      case 'turned-while-locked':
        return false;
      // On the way back.
      case 'seat-missing':
      case 'tightened-unseated':
        return others.every((other) => this.putBack(other, deep));
      case 'seal-missing':
        return others.every((seal) => this.renew(seal, deep));
      case 'single-use-reused': {
        const used = [...others, fact.subject?.thing].filter(
          (one) => one !== undefined && one !== step.thing,
        );
        return used.length > 0 && used.every((one) => this.renew(one!, deep));
      }
      case 'filled-before-cured': {
        const left = fact.words?.left;
        return left !== undefined && this.reach({ verb: 'wait', thing: step.thing, amount: left }, deep);
      }
      case 'compound-missing':
        return [...others, step.thing].some((one) => this.coat(one, deep));
      case 'face-not-cleaned':
        return others.every((face) => this.reach({ verb: 'clean', thing: face }, deep));
      case 'restored-out-of-order':
        return others.every((other) => this.putBack(other, deep));
      default:
        return false;
    }
  }

  private support(thing: Thing, deep: number): boolean {
    const tool = this.model.things.find(
      (one) => one.type === 'tool' && /hoist|jack|stand|sling|strap|support/.test(`${one.name} ${one.title}`),
    );
    return this.reach({ verb: 'support', thing, tool: tool?.name ?? 'hoist' }, deep);
  }

  private makeSafe(system: Thing, deep: number): boolean {
    const { model, run } = this;
    const within = run.within;
    const is = (aspect: 'live' | 'pressure' | 'heat') => run.where(aspect, system.first, 1, within) !== NONE;
    if (system.hasLive && is('live')) {
      if (!this.reach({ verb: 'isolate', thing: system }, deep)) return false;
      for (const item of model.isolators[system.first]!) {
        const isolator = model.thingOf[item]!;
        if (isolator.type === 'isolator')
          this.reach({ verb: 'lock out', thing: isolator, tool: 'padlock' }, deep);
      }
    }
    // The pressure is let out once nothing makes it again.
    if (system.hasPressure && is('pressure')) {
      const point = model.reliefPoints[system.first]![0];
      const thing = point === undefined ? undefined : model.thingOf[point]!;
      const opened =
        thing?.type === 'control' || thing?.type === 'isolator'
          ? this.reach({ verb: 'open', thing }, deep)
          : this.reach({ verb: 'relieve', thing: system }, deep);
      if (!opened) return false;
    }
    if (system.provable && !this.prove(system, deep)) return false;
    return !(system.hasHeat && is('heat')) || this.reach({ verb: 'let cool', thing: system }, deep);
  }

  private prove(system: Thing, deep: number): boolean {
    const clause = system.declaration.clauses.find((one) => one.clause === 'proved with');
    const tool = clause && 'refs' in clause ? clause.refs[0]?.name.text : undefined;
    return this.reach({ verb: 'prove', thing: system, ...(tool ? { tool } : {}) }, deep);
  }

  // ------------------------------------------------------------ back

  /** The way back of what was done, last first. */
  back(strip: readonly Step[]): boolean {
    this.owed.clear();
    for (const { verb, thing } of [...strip].reverse()) {
      if ((verb === 'restore' || verb === 'isolate' || verb === 'unlock') && !this.pay()) return false;
      if (!this.undo(verb, thing)) return false;
    }
    for (const tool of this.model.things)
      if (tool.type === 'tool' && this.inPlace(tool) && !this.reach({ verb: 'remove', thing: tool }, 0))
        return false;
    return this.pay() && this.refill() && this.freshen();
  }

  /** Does what rules ask for after something went back. */
  private pay(): boolean {
    for (const [key, step] of this.owed) {
      this.owed.delete(key);
      if (!this.reach(step, 0)) return false;
    }
    return true;
  }

  private undo(verb: string, thing: Thing): boolean {
    switch (verb) {
      case 'remove':
      case 'unbolt':
      case 'disconnect':
        return this.putBack(thing, 0);
      case 'support':
        return this.reach({ verb: 'lower', thing }, 0);
      case 'isolate':
        return this.reach({ verb: 'restore', thing }, 0);
      case 'lock out':
        return this.reach({ verb: 'unlock', thing }, 0);
      case 'open':
        return this.reach({ verb: 'close', thing }, 0);
      default:
        return true;
    }
  }

  private putBack(thing: Thing, deep: number): boolean {
    if (!this.isAway(thing)) return true;
    const fresh = thing.singleUse;
    const put = (verb: string) => this.reach({ verb, thing, ...(fresh ? { fresh } : {}) }, deep);
    if (thing.type === 'connection') return fresh ? put('fit') : put('connect');
    const held = thing.type === 'part' && this.model.heldBy[thing.first]!.length > 0;
    if (!held) return put(fresh ? 'fit' : 'refit');
    // New fasteners go in by a step of their own.
    const fasteners = [...new Set(this.model.heldBy[thing.first]!.map((item) => this.model.thingOf[item]!))];
    if (!fresh && fasteners.every((one) => !one.singleUse) && put('bolt up')) return true;
    if (!put(fresh ? 'fit' : 'refit')) return false;
    return fasteners.every((one) => this.putBack(one, deep));
  }

  /** A seal that was parted is renewed. */
  private renew(seal: Thing, deep: number): boolean {
    if (!this.isAway(seal) && !this.reach({ verb: 'remove', thing: seal, discard: true }, deep)) return false;
    return this.reach({ verb: 'fit', thing: seal, fresh: true }, deep);
  }

  /** What is put on a face, or on a part, before the part goes on. */
  private coat(thing: Thing, deep: number): boolean {
    const clause = thing.declaration.clauses.find((one) => one.clause === 'coated with');
    const tool = clause && 'refs' in clause ? clause.refs[0]?.name.text : undefined;
    return tool !== undefined && this.reach({ verb: 'coat', thing, tool }, deep);
  }

  /** Systems that were opened are topped up, and bled where they must be. */
  private refill(): boolean {
    for (const system of this.model.things) {
      if (system.type !== 'system' || !system.hasFluid) continue;
      const { run } = this;
      if (run.where('fluid', system.first, ~1, run.within) === NONE) continue;
      if (!this.reach({ verb: 'top up', thing: system }, 0)) return false;
      if (system.needsBleeding && run.where('bled', system.first, 2, run.within) !== NONE)
        if (!this.reach({ verb: 'bleed', thing: system }, 0)) return false;
    }
    return true;
  }

  /** What needs securing is secured. */
  private freshen(): boolean {
    for (const thing of this.model.things) {
      if (!thing.needsSecuring || thing.type !== 'fastener') continue;
      const { run } = this;
      if (run.where('secured', thing.first, 2, run.within) !== NONE)
        if (!this.reach({ verb: 'secure', thing }, 0)) return false;
    }
    return true;
  }

  // ------------------------------------------------------------ trying

  private isAway(thing: Thing): boolean {
    const { run } = this;
    // FITTED, FINAL and CONNECTED are all 0.
    return run.where('place', thing.first, ~1, run.within) !== NONE;
  }

  /** What a step would be blamed for; `keep` carries it out. */
  private blames(step: Step, keep: boolean): Fact[] {
    const { run } = this;
    const before = run.facts.length;
    const saved = run.state;
    const action = actionOf(step, -1 - ++this.count);
    if (!keep) run.state = saved.copy();
    perform(run, action, this.file, (one) => {
      const thing = this.model.byName.get(one.name.text);
      return thing && itemsOf(thing, one);
    });
    const facts = run.facts.splice(before);
    if (!keep) {
      run.state = saved;
      run.steps.takeBack();
    }
    return facts;
  }
}

function keyOf({ check, subject, others = [] }: Fact): string {
  return `${check} ${subject?.thing.id} ${others.map(({ thing }) => thing.id)}`;
}
