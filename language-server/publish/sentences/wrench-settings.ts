/**
 * What to set on the scale where that is not the torque at the nut: an adapter in line makes the wrench longer, and a
 * self-locking nut takes torque before it bears. One setting for each torque that the step tightens to, for a reader
 * has no calculator at the bench. Formulas: ../../fastening/wrench.ts, which names their sources.
 */
import { exact, type Quantity, unitNamed } from '../../../grammar/quantity/index.ts';
import { adapterMatters, settingWithAdapter } from '../../fastening/index.ts';
import { bothUnits, type MeasureOptions, measureOf } from '../../lists/measures.ts';
import { bandIn } from '../../model/fastening-amounts.ts';
import { clauseOf } from '../../model/fastening-declared.ts';
import { leverOf } from '../../model/fastening-tools.ts';
import type { Model, Thing } from '../../model/model.ts';
import type { Measure, WrenchSetting } from '../document/types.ts';
import type { Words } from '../words/words.ts';
import { bracketed } from './noun.ts';

export interface Tightening {
  /** At the nut, in the order in which they are set; `number` is the stage. */
  readonly torques: readonly { readonly torque: Quantity; readonly number?: number }[];
  readonly prevailing: Quantity | undefined;
  /** Named in the step. */
  readonly tools: readonly Thing[];
  /** The author says that the adapter stands square to the wrench: then it changes nothing. */
  readonly square: boolean;
}

export interface SettingContext {
  model: Model;
  words: Words;
  measures: MeasureOptions;
}

/** None where the scale shows the torque itself. */
export function wrenchSettingsOf(context: SettingContext, tightening: Tightening): WrenchSetting[] {
  const { model, words, measures } = context;
  const { tools, square } = tightening;
  const torques = tightening.torques.filter(({ torque }) => torque.unit.kind === 'torque');
  const { lengths, wrench: levered } = leverOf(model, tools);
  const ratio = lengths && !square && adapterMatters(lengths) ? settingWithAdapter(1, lengths) : undefined;
  const running = tightening.prevailing?.unit.kind === 'torque' ? tightening.prevailing : undefined;
  if (!ratio?.known && !running) return [];
  const wrench = levered ?? tools.find((tool) => isRanged(tool));
  const name = wrench ? `the ${bracketed(wrench.title)}` : words.say('wrench.any');
  return torques.map(({ torque, number }, at) => {
    const added = running ? middleOf(running, torque.unit.symbol) : 0;
    const factor = ratio?.known ? ratio.value : 1;
    const setting = computed(torque, (value) => (value + added) * factor, measures);
    const shown = bothUnits(setting);
    const because = [
      running &&
        words.say('wrench.prevailing', {
          prevailing: bothUnits(measureOf(running, measures)),
          torque: bothUnits(measureOf(torque, measures)),
        }),
      ratio?.known &&
        words.say('wrench.adapter', {
          torque: bothUnits(
            added === 0 ? measureOf(torque, measures) : computed(torque, (value) => value + added, measures),
          ),
          setting: shown,
        }),
    ].filter((sentence) => typeof sentence === 'string');
    const key = torques.length > 1 && number !== undefined ? 'wrench.set.stage' : 'wrench.set';
    return {
      ...(wrench ? { tool: wrench.name } : {}),
      name: wrench?.title ?? words.say('wrench.any'),
      setting,
      sentence: words.say(key, { tool: name, setting: shown, number: String(number ?? at + 1) }),
      // The reason is the same at every stage: it is told once.
      ...(at === 0 ? { because: because.join(' ') } : {}),
    };
  });
}

function isRanged(tool: Thing): boolean {
  return clauseOf(tool, 'range') !== undefined || /torque/i.test(`${tool.name} ${tool.title}`);
}

function middleOf(quantity: Quantity, unit: string): number {
  const { low, high } = bandIn(quantity, unit);
  return (low + high) / 2;
}

/** Settings are given to three digits: finer than any scale. */
function computed(torque: Quantity, change: (value: number) => number, measures: MeasureOptions): Measure {
  const value = exact.toNumber(torque.nominal ?? torque.high ?? torque.low ?? exact.rational(0));
  const rounded = Number(change(value).toPrecision(3));
  const number = exact.parseRational(String(rounded)) ?? exact.rational(Math.round(rounded));
  const unit = unitNamed(torque.unit.symbol) ?? torque.unit;
  // `22 N·m`, not `22.0`: nobody sets a tenth of it.
  const decimals = String(rounded).split('.')[1]?.length ?? 0;
  const step = exact.powerOfTen(-decimals);
  return measureOf({ form: 'value', unit, low: number, high: number, nominal: number, step }, measures);
}
