/**
 * The tools that a procedure lists against the torques and angles that its steps ask for. Facts
 * `wrench-out-of-range`, `wrench-too-large`, `gauge-missing`, `adapter-uncorrected`. Where no torque wrench with a
 * range is listed, or one without a range, nothing is claimed about ranges.
 */
import { exact, type Quantity } from '../../grammar/quantity/index.ts';
import type { Action, Header, Procedure } from '../../grammar/syntax/tree.ts';
import {
  adapterMatters,
  bestWrench,
  settingWithAdapter,
  type Wrench,
  wrenchFit,
} from '../fastening/index.ts';
import { tellsAngleByMarks, torquesIn } from '../wording/torque-words.ts';
import type { Fact } from './facts.ts';
import { bandIn, readTyped, said, torqueBand, torqueText } from './fastening-amounts.ts';
import { clauseOf, declared } from './fastening-declared.ts';
import type { Tightened } from './fastening-steps.ts';
import { list, type Model, type Thing } from './model.ts';

export interface Toolset {
  /** Everything listed after `tools`. */
  readonly listed: readonly Thing[];
  readonly wrenches: readonly TorqueWrench[];
  /** A torque wrench is listed whose range nobody declares. */
  readonly unknownRange: boolean;
  readonly angleGauge: boolean;
}

interface TorqueWrench extends Wrench {
  readonly thing: Thing;
  readonly range: Quantity;
}

export function toolsetOf(model: Model, procedure: Procedure): Toolset {
  const header = procedure.headers.find((one): one is Header & { header: 'tools' } => one.header === 'tools');
  return toolset(
    model,
    (header?.refs ?? []).flatMap(({ name }) => model.byName.get(name.text) ?? []),
  );
}

/** Tools that an action names after `with`. */
export function toolsWith(model: Model, action: Action): Thing[] {
  const tools: Thing[] = [];
  for (const tail of action.tails) {
    if (tail.tail !== 'with') continue;
    for (const { name } of tail.refs) {
      const thing = model.byName.get(name.text);
      if (thing?.type === 'tool') tools.push(thing);
    }
  }
  return tools;
}

/** A wrench by its range, or by what it is called. */
export function isTorqueTool(model: Model, tool: Thing): boolean {
  return wrenchOf(model, tool) !== undefined || /torque/i.test(`${tool.name} ${tool.title}`);
}

/** Set to one torque for good, or called after it: the value is on the tool. */
export function isPreset(model: Model, tool: Thing): boolean {
  const wrench = wrenchOf(model, tool);
  return /\d/.test(tool.title) || (wrench !== undefined && wrench.lowest === wrench.highest);
}

/** What is wrong with the tools for this tightening: at most one fact of each kind. */
export function toolFaults(
  model: Model,
  tools: Toolset,
  action: Action,
  own: readonly Thing[],
  one: Tightened,
  typed: Quantity | undefined,
): Fact[] {
  const asked = typed ? [typed] : torquesOf(model, one);
  return [
    ...wrenchFaults(model, tools, own, one, asked),
    ...gaugeFault(model, tools, action, own, one),
    ...adapterFault(model, action, own, one, asked[asked.length - 1]),
  ];
}

function wrenchFaults(
  model: Model,
  tools: Toolset,
  own: readonly Thing[],
  one: Tightened,
  asked: readonly Quantity[],
): Fact[] {
  const named = own.length > 0 ? toolset(model, own) : undefined;
  // Turned with a plain spanner, by the choice of the author.
  if (named && named.wrenches.length === 0 && !named.unknownRange && own.some(isTurningTool)) return [];
  const use = named && (named.wrenches.length > 0 || named.unknownRange) ? named : tools;
  if (use.wrenches.length === 0 || use.unknownRange || asked.length === 0) return [];
  const others = use.wrenches.map(({ thing }) => ({ thing }));
  for (const torque of asked) {
    const band = torqueBand(torque);
    if (!band || !(band.high > 0) || bestWrench(use.wrenches, band).known) continue;
    const low = use.wrenches.every((wrench) => wrenchFit(wrench, band).reach === 'below-lowest-mark');
    const high = use.wrenches.every((wrench) => wrenchFit(wrench, band).reach === 'above-highest-mark');
    return [
      {
        check: 'wrench-out-of-range',
        at: one.at,
        subject: { thing: one.thing },
        others,
        words: {
          torque: said(torque),
          ranges: list(use.wrenches.map(({ range }) => said(range))),
          side: low ? 'below' : high ? 'above' : '',
          preset: use.wrenches.every(({ lowest, highest }) => lowest === highest) ? 'yes' : '',
        },
      },
    ];
  }
  const last = asked[asked.length - 1]!;
  const band = torqueBand(last);
  const fit = band && bestWrench(use.wrenches, band);
  if (!fit?.known || !fit.value.low) return [];
  const { range, thing } = fit.value.wrench as TorqueWrench;
  return [
    {
      check: 'wrench-too-large',
      at: one.at,
      subject: { thing: one.thing },
      others: [{ thing }],
      words: {
        torque: said(last),
        ranges: said(range),
        share: String(Math.round((fit.value.shareOfFullScale ?? 0) * 100)),
      },
    },
  ];
}

function gaugeFault(
  model: Model,
  tools: Toolset,
  action: Action,
  own: readonly Thing[],
  one: Tightened,
): Fact[] {
  if (tools.listed.length === 0 || tools.angleGauge || own.some(isAngleGauge)) return [];
  if (action.text && tellsAngleByMarks(action.text.value)) return [];
  for (const { stage, number } of declared(model, one.thing).stages) {
    if (stage.kind !== 'angle' || (one.stage !== undefined && one.stage !== number)) continue;
    const angle = readTyped(stage.quantity, model.values);
    // A part of a turn is seen without a gauge.
    if (angle?.unit.symbol !== '°') continue;
    return [
      { check: 'gauge-missing', at: one.at, subject: { thing: one.thing }, words: { angle: said(angle) } },
    ];
  }
  return [];
}

function adapterFault(
  model: Model,
  action: Action,
  own: readonly Thing[],
  one: Tightened,
  torque: Quantity | undefined,
): Fact[] {
  const { adapter, lengths } = leverOf(model, own);
  if (!adapter || !torque) return [];
  const sentence = action.text?.value ?? '';
  if (isSquare(sentence)) return [];
  const told = torquesIn(sentence);
  const words: Record<string, string> = { torque: said(torque) };
  const setting = lengths && settingFor(torque, lengths);
  if (lengths) {
    if (!adapterMatters(lengths)) return [];
    if (setting !== undefined) words.setting = torqueText(setting, torque, 3);
  }
  // A torque in the sentence is the setting, or at least thought of.
  if (told.length > 0) {
    if (setting === undefined || told.some(({ quantity }) => isNear(quantity, setting))) return [];
    words.given = list([...new Set(told.map(({ quantity }) => said(quantity)))]);
  }
  return [
    {
      check: 'adapter-uncorrected',
      at: one.at,
      subject: { thing: one.thing },
      others: [{ thing: adapter }],
      words,
    },
  ];
}

/** What a wrench is set to where an adapter in line lengthens it. */
export interface WrenchSetting {
  readonly wrench: Thing;
  readonly adapter: Thing;
  /** At the nut. */
  readonly torque: Quantity;
  /** On the scale, in the unit of the torque, to three digits: `27.5 N·m`. */
  readonly setting: string;
}

/**
 * The settings for the torques of one thing that a step tightens, in order; empty where the step names no adapter, a
 * length is missing, or the adapter stands square to the wrench. TW = TA L/(L + A): US Army TM 1-1500-204-23.
 */
export function wrenchSettings(model: Model, action: Action, thing: Thing): WrenchSetting[] {
  const own = toolsWith(model, action);
  const { adapter, wrench, lengths } = leverOf(model, own);
  if (!adapter || !wrench || !lengths || isSquare(action.text?.value ?? '')) return [];
  return torquesOf(model, { thing }).flatMap((torque) => {
    const setting = settingFor(torque, lengths);
    return setting === undefined ? [] : { wrench, adapter, torque, setting: torqueText(setting, torque, 3) };
  });
}

/** The wrench of a step and what makes it longer; lengths in m, where both are declared. */
export interface Lever {
  readonly adapter?: Thing;
  readonly wrench?: Thing;
  readonly lengths?: Lengths;
}

export interface Lengths {
  readonly wrenchLength: number;
  readonly adapterLength: number;
}

export function leverOf(model: Model, own: readonly Thing[]): Lever {
  const adapter = own.find((tool) => isAdapter(model, tool));
  const wrench = own.find((tool) => tool !== adapter && isTorqueTool(model, tool));
  const [wrenchLength, adapterLength] = [lengthOf(model, wrench), lengthOf(model, adapter)];
  return {
    ...(adapter ? { adapter } : {}),
    ...(wrench ? { wrench } : {}),
    ...(wrenchLength !== undefined && adapterLength !== undefined
      ? { lengths: { wrenchLength, adapterLength } }
      : {}),
  };
}

/** N·m; of a range the middle. */
function settingFor(torque: Quantity, lengths: Lengths): number | undefined {
  const band = torqueBand(torque);
  const setting = band && settingWithAdapter((band.low + band.high) / 2, lengths);
  return setting?.known && Number.isFinite(setting.value) ? setting.value : undefined;
}

/** At a right angle to the wrench an adapter changes nothing. */
export function isSquare(sentence: string): boolean {
  return /\b90 ?(°|deg)|right angle|\bsquare\b/i.test(sentence);
}

/** Within what a torque wrench is accurate to, 4 % (ISO 6789:2003, adjustable tools above 10 N·m). */
function isNear(told: Quantity, setting: number): boolean {
  const band = torqueBand(told);
  return band !== undefined && band.low <= setting * 1.04 && band.high >= setting * 0.96;
}

/** The torques that this tightening sets on the wrench, in order. */
function torquesOf(model: Model, one: Pick<Tightened, 'thing' | 'stage'>): Quantity[] {
  const { stages, torque } = declared(model, one.thing);
  if (stages.length === 0) return torque ? [torque] : [];
  return stages.flatMap((each) =>
    each.torque && (one.stage === undefined || one.stage === each.number) ? [each.torque] : [],
  );
}

function toolset(model: Model, listed: readonly Thing[]): Toolset {
  const wrenches = listed.flatMap((thing) => wrenchOf(model, thing) ?? []);
  return {
    listed,
    wrenches,
    unknownRange: listed.some((tool) => isTorqueTool(model, tool) && !wrenchOf(model, tool)),
    angleGauge: listed.some(isAngleGauge),
  };
}

function wrenchOf(model: Model, thing: Thing): TorqueWrench | undefined {
  if (thing.type !== 'tool') return undefined;
  const range = readTyped(clauseOf(thing, 'range')?.quantity, model.values);
  const band = torqueBand(range);
  if (!range || !band || !Number.isFinite(band.high)) return undefined;
  return { thing, range, name: thing.title, lowest: band.low, highest: band.high };
}

function isTurningTool(tool: Thing): boolean {
  return /spanner|wrench|driver|ratchet|\bkey\b|socket/i.test(
    `${tool.name.replaceAll('-', ' ')} ${tool.title}`,
  );
}

function isAngleGauge(tool: Thing): boolean {
  return /angle|protractor|degree/i.test(`${tool.name} ${tool.title}`);
}

/**
 * A tool that is declared an adapter, or has a length, no range, and is called so. An extension along the drive has a
 * length too and changes nothing: what is only called an extension is left alone.
 */
function isAdapter(model: Model, tool: Thing): boolean {
  if (clauseOf(tool, 'adapter')) return true;
  const called = /adapt[eo]r|crow|offset|flare/i.test(`${tool.name} ${tool.title}`);
  return called && lengthOf(model, tool) !== undefined && wrenchOf(model, tool) === undefined;
}

/** m. */
function lengthOf(model: Model, tool: Thing | undefined): number | undefined {
  const read = tool && readTyped(clauseOf(tool, 'length')?.quantity, model.values);
  if (read?.unit.kind !== 'length' || read.nominal === undefined) return undefined;
  return bandIn({ ...read, form: 'value', low: read.nominal, high: read.nominal }, 'm').low;
}

/** Whether a percentage is the whole. */
export function isWholePass(percent: Quantity | undefined): boolean {
  return percent?.low !== undefined && exact.toNumber(percent.low) >= 100;
}
