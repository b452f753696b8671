/**
 * How tight, in which stages, in which order, with which setting: the fastening of a step as data with its sentences.
 */
import { exact, printReader, type Quantity } from '../../../grammar/quantity/index.ts';
import type { Action, Order } from '../../../grammar/syntax/tree.ts';
import { bothUnits, type MeasureOptions, measureOf } from '../../lists/measures.ts';
import { readTyped } from '../../model/fastening-amounts.ts';
import { clauseOf, type DeclaredStage, declared, percentOf } from '../../model/fastening-declared.ts';
import type { Model, Thing } from '../../model/model.ts';
import type { Fastening, StageDetail } from '../document/types.ts';
import type { Words } from '../words/words.ts';
import type { Noun } from './noun.ts';
import { bracketed } from './noun.ts';
import { orderOf } from './order.ts';
import { sayable } from './texts.ts';
import { wrenchSettingsOf } from './wrench-settings.ts';

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
  /** The adapter stands at a right angle to the wrench. */
  square?: boolean;
}

export function fasteningOf(given: FasteningContext, turning: Turning): Fastening {
  const { model } = given;
  const { thing, noun, work } = turning;
  const tightening = work === 'tighten' || work === 'check';
  const plan = declared(model, thing);
  const planned = tightening && !turning.byFeel ? (plan.final ?? plan.torque) : undefined;
  const final = turning.torque ?? planned;
  const measures = alikeIn(given.measures, [
    ...torquesOf(model, turning, final).map(({ torque }) => torque),
    ...(plan.final ? [plan.final] : []),
  ]);
  const context = { ...given, measures };
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
    ...(final ? { torque: measureOf(final, measures, ownSecond(model, thing, final)) } : {}),
    ...(final && turning.pass ? passOf(final, turning.pass, measures) : {}),
    stages,
    ...(order ? { order } : {}),
    wrenches:
      tightening && !turning.byFeel
        ? wrenchSettingsOf(context, {
            torques: torquesOf(model, turning, final),
            prevailing,
            tools: turning.tools,
            square: turning.square ?? false,
          })
        : [],
    ...(prevailing ? { prevailing: measureOf(prevailing, measures) } : {}),
    leftHand: thing.declaration.clauses.some(({ clause }) => clause === 'left-hand'),
    toYield: tightening && thing.toYield,
    lubricated: lubricated.map(({ name }) => titleOf(name.text)),
    securedBy: secured.map(({ name }) => titleOf(name.text)),
  };
}

/** All torques of a plan are read in the same second unit, that of the greatest. */
function alikeIn(measures: MeasureOptions, torques: readonly Quantity[]): MeasureOptions {
  const ends = torques.flatMap(({ unit, high, low }) => (unit.symbol === 'N·m' ? [high ?? low] : []));
  const numbers = ends.flatMap((end) => (end === undefined ? [] : [exact.toNumber(end)]));
  return numbers.length > 0 ? { ...measures, greatestTorque: Math.max(...numbers) } : measures;
}

/** What a percentage of the final torque comes to. */
function passOf(final: Quantity, pass: Quantity, measures: MeasureOptions): Pick<Fastening, 'pass'> {
  const share = percentOf(final, pass);
  return share ? { pass: measureOf(share, measures) } : {};
}

/** The stages that this step does, numbered as in the plan. */
function stagesOf(context: FasteningContext, { thing, torque, stage, pass, byFeel }: Turning): StageDetail[] {
  if (torque || pass || byFeel) return [];
  const { stages } = declared(context.model, thing);
  return stages
    .filter(({ number }) => stage === undefined || stage === number)
    .map((one) => stageDetail(context, thing, one));
}

/** The second unit that the author gave the declared value himself. */
function ownSecond(model: Model, thing: Thing, value: Quantity): string | undefined {
  const shown = printReader(value);
  const given = [
    thing.torque,
    ...thing.stages.map((stage) => ('quantity' in stage ? stage.quantity : undefined)),
  ];
  for (const typed of given) {
    const read = typed?.second && readTyped(typed, model.values);
    const second = read && printReader(read) === shown ? readTyped(typed.second, model.values) : undefined;
    if (second) return printReader(second);
  }
  return undefined;
}

function stageDetail(
  { model, words, measures }: FasteningContext,
  thing: Thing,
  one: DeclaredStage,
): StageDetail {
  const { stage, number, torque } = one;
  const typed = 'quantity' in stage ? readTyped(stage.quantity, model.values) : undefined;
  const value = torque ?? typed;
  const measure = value && measureOf(value, measures, ownSecond(model, thing, value));
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

/** The torques that this step sets on the wrench, in order. */
function torquesOf(
  model: Model,
  { thing, torque, stage, pass }: Turning,
  final: Quantity | undefined,
): { torque: Quantity; number?: number }[] {
  const share = final && pass ? percentOf(final, pass) : undefined;
  if (share) return [{ torque: share }];
  const stages = torque
    ? []
    : declared(model, thing).stages.flatMap(({ torque: one, number }) =>
        one && (stage === undefined || stage === number) ? [{ torque: one, number }] : [],
      );
  return stages.length > 0 ? stages : final ? [{ torque: final }] : [];
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
