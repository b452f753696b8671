/**
 * How tight, in which stages, in which order, with which setting: the fastening of a step as data with its sentences.
 * Formulas for wrench settings: ../../fastening/wrench.ts (adapter, prevailing torque), which names their sources.
 */
import { exact, printReader, type Quantity, unitNamed } from '../../../grammar/quantity/index.ts';
import type { Action, Order } from '../../../grammar/syntax/tree.ts';
import { adapterMatters, settingWithAdapter } from '../../fastening/index.ts';
import { bothUnits, type MeasureOptions, measureOf } from '../../lists/measures.ts';
import { bandIn, readTyped } from '../../model/fastening-amounts.ts';
import { clauseOf, type DeclaredStage, declared } from '../../model/fastening-declared.ts';
import type { Model, Thing } from '../../model/model.ts';
import type { Fastening, Measure, StageDetail, WrenchSetting } from '../document/types.ts';
import type { Words } from '../words/words.ts';
import type { Noun } from './noun.ts';
import { bracketed } from './noun.ts';
import { orderOf } from './order.ts';
import { sayable } from './texts.ts';

export interface FasteningContext {
  model: Model;
  words: Words;
  measures: MeasureOptions;
}

export interface Turning {
  thing: Thing;
  noun: Noun;
  work: Fastening['work'];
  /** Torque typed in the step, in place of the plan. */
  torque?: Quantity;
  /** Number of the one stage that is done. */
  stage?: number;
  pass?: Quantity;
  /** Tightened by feel, as the step says: the plan is not done. */
  byFeel?: boolean;
  order?: Order;
  tools: readonly Thing[];
}

export function fasteningOf(context: FasteningContext, turning: Turning): Fastening {
  const { model, measures } = context;
  const { thing, noun, work } = turning;
  const tightening = work === 'tighten' || work === 'check';
  const plan = declared(model, thing);
  const planned = tightening && !turning.byFeel ? (plan.final ?? plan.torque) : undefined;
  const final = turning.torque ?? planned;
  const stages = work === 'tighten' ? stagesOf(context, turning) : [];
  const order = orderOf(
    context,
    thing,
    work,
    turning.order,
    noun.positions.length > 0 || noun.some !== false,
  );
  const prevailing = readTyped(clauseOf(thing, 'prevailing torque')?.quantity, model.values);
  const secured = clauseOf(thing, 'secured by')?.refs ?? [];
  const lubricated = clauseOf(thing, 'lubricated with')?.refs ?? [];
  const titleOf = (name: string) => bracketed(model.byName.get(name)?.title ?? name.replaceAll('-', ' '));
  return {
    id: thing.name,
    name: thing.title,
    ...(noun.count === undefined ? {} : { count: noun.positions.length || noun.count }),
    work,
    ...(final ? { torque: measureOf(final, measures) } : {}),
    stages,
    ...(order ? { order } : {}),
    wrenches: tightening ? wrenchesOf(context, turning, final, prevailing) : [],
    ...(prevailing ? { prevailing: measureOf(prevailing, measures) } : {}),
    leftHand: thing.declaration.clauses.some(({ clause }) => clause === 'left-hand'),
    toYield: tightening && thing.toYield,
    lubricated: lubricated.map(({ name }) => titleOf(name.text)),
    securedBy: secured.map(({ name }) => titleOf(name.text)),
  };
}

/** The stages that this step does, numbered as in the plan. */
function stagesOf(context: FasteningContext, { thing, torque, stage, pass, byFeel }: Turning): StageDetail[] {
  if (torque || pass || byFeel) return [];
  const { stages } = declared(context.model, thing);
  return stages
    .filter(({ number }) => stage === undefined || stage === number)
    .map((one) => stageDetail(context, one));
}

function stageDetail({ model, words, measures }: FasteningContext, one: DeclaredStage): StageDetail {
  const { stage, number, torque } = one;
  const typed = 'quantity' in stage ? readTyped(stage.quantity, model.values) : undefined;
  const measure = (torque ?? typed) ? measureOf((torque ?? typed)!, measures) : undefined;
  const what = measure ? bothUnits(measure) : '';
  const kind = stage.kind === 'again' ? 'torque' : stage.kind;
  const sentence = (): string => {
    switch (stage.kind) {
      case 'torque':
        return words.say('stage.torque', { what });
      case 'again':
        return measure ? words.say('stage.again', { what }) : words.say('stage.again.bare');
      case 'angle':
        return words.say('stage.angle', { what });
      case 'percent': {
        const percent = typed ? printReader(typed) : '';
        return words.say(torque ? 'stage.percent.to' : 'stage.percent', { percent, what });
      }
      case 'by hand':
        return words.say('stage.by hand');
      case 'loosen':
        return words.say('stage.loosen');
      case 'back off':
        return measure ? words.say('stage.back off', { what }) : words.say('stage.back off.bare');
      case 'wait':
        return measure ? words.say('stage.wait', { what }) : words.say('stage.wait.bare');
      case 'until': {
        const part = stage.turning && model.byName.get(stage.turning.name.text);
        const until = sayable(stage.text, model);
        return part
          ? words.say('stage.until turning', { what: until, part: `the ${part.title}` })
          : words.say('stage.until', { what: until });
      }
    }
  };
  return {
    number,
    sentence: sentence(),
    kind,
    ...(measure ? { measure } : {}),
    again: stage.kind === 'again',
  };
}

function wrenchesOf(
  context: FasteningContext,
  turning: Turning,
  final: Quantity | undefined,
  prevailing: Quantity | undefined,
): WrenchSetting[] {
  if (final?.unit.kind !== 'torque') return [];
  const { model, words, measures } = context;
  const isRanged = (tool: Thing) =>
    clauseOf(tool, 'range') !== undefined || /torque/i.test(`${tool.name} ${tool.title}`);
  const wrench = turning.tools.find(isRanged);
  if (!wrench) return [];
  const torque = bothUnits(measureOf(final, measures));
  const name = bracketed(wrench.title);
  const set = (setting: Measure, because: string): WrenchSetting => ({
    tool: wrench.name,
    name: wrench.title,
    setting,
    sentence: words.say('wrench.set', { tool: `the ${name}`, setting: bothUnits(setting) }),
    because,
  });
  const metres = (tool: Thing | undefined) => lengthOf(model, tool);
  const adapter = turning.tools.find((tool) => tool !== wrench && ADAPTER.test(`${tool.name} ${tool.title}`));
  const [wrenchLength, adapterLength] = [metres(wrench), metres(adapter)];
  if (adapter && wrenchLength !== undefined && adapterLength !== undefined) {
    const lengths = { wrenchLength, adapterLength };
    const ratio = settingWithAdapter(1, lengths);
    if (ratio.known && adapterMatters(lengths)) {
      const setting = scaled(final, ratio.value, measures);
      const because = words.say('wrench.adapter', { torque, setting: bothUnits(setting) });
      return [set(setting, because)];
    }
  }
  if (prevailing?.unit.kind === 'torque') {
    const running = bandIn(prevailing, final.unit.symbol);
    const setting = shifted(final, (running.low + running.high) / 2, measures);
    const said = bothUnits(measureOf(prevailing, measures));
    return [set(setting, words.say('wrench.prevailing', { prevailing: said, torque }))];
  }
  return [];
}

/** Called an adapter; a plain extension along the drive changes nothing (as the checks have it). */
const ADAPTER = /adapt[eo]r|crow|offset|flare/i;

/** m */
function lengthOf(model: Model, tool: Thing | undefined): number | undefined {
  const read = tool && readTyped(clauseOf(tool, 'length')?.quantity, model.values);
  return read?.unit.kind === 'length' && read.nominal !== undefined ? bandIn(read, 'm').low : undefined;
}

/** Settings are given to three digits: finer than any scale. */
function scaled(torque: Quantity, ratio: number, measures: MeasureOptions): Measure {
  return computed(torque, (value) => value * ratio, measures);
}

function shifted(torque: Quantity, by: number, measures: MeasureOptions): Measure {
  return computed(torque, (value) => value + by, measures);
}

function computed(torque: Quantity, change: (value: number) => number, measures: MeasureOptions): Measure {
  const value = exact.toNumber(torque.nominal ?? torque.high ?? torque.low ?? exact.rational(0));
  const rounded = Number(change(value).toPrecision(3));
  const number = exact.parseRational(String(rounded)) ?? exact.rational(Math.round(rounded));
  const unit = unitNamed(torque.unit.symbol) ?? torque.unit;
  const step = exact.powerOfTen(exact.magnitude(number) - 2);
  return measureOf({ form: 'value', unit, low: number, high: number, nominal: number, step }, measures);
}

/** The torque typed in a step: `to 25 N·m`, `at 22 N·m`, `to wheel-torque`. */
export function typedTorque(model: Model, action: Action): Quantity | undefined {
  for (const tail of action.tails) {
    if (tail.tail !== 'to' && tail.tail !== 'at') continue;
    const [ref] = tail.refs;
    const named =
      ref && model.values.has(ref.name.text)
        ? { start: 0, end: 0, form: 'plain' as const, amounts: [], named: ref }
        : undefined;
    const quantity = readTyped(tail.quantity ?? named, model.values);
    if (quantity?.unit.kind === 'torque') return quantity;
  }
  const own = readTyped(action.quantity, model.values);
  return own?.unit.kind === 'torque' ? own : undefined;
}
