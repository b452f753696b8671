/**
 * Working and waiting time. Waiting is what the steps prescribe while nobody has to do anything: `wait`, `let cool for`,
 * `evacuate for`, `drain for`. Where something is found or a repeat goes round again it takes longer: that is not counted.
 */
import { exact } from '../../grammar/quantity/index.ts';
import type { Action, Quantity as Typed } from '../../grammar/syntax/tree.ts';
import { bandIn, readTyped } from '../model/fastening-amounts.ts';
import type { Job } from './job.ts';
import { measureTyped } from './measures.ts';
import type { JobTimes, Measure } from './types.ts';
import type { Written } from './written.ts';

const IDLE: ReadonlySet<string> = new Set(['wait', 'let cool', 'evacuate', 'drain', 'recover']);

export function timesOf(job: Job, typed: Typed | undefined): JobTimes {
  const read = readTyped(typed, job.model.values);
  const stated = read?.unit.kind === 'time' ? measureTyped(typed, job.model, job.measures) : undefined;
  const minutes = job.combinations.all.map((_, combo) => waits(job, job.items, combo) / 60);
  const inside = minutes.filter((_, combo) => job.within[combo]);
  const waitingMinutes = Math.max(0, ...inside);
  const statedMinutes = read && stated ? bandIn(read, 's').high / 60 : undefined;
  const working = statedMinutes === undefined ? undefined : round(statedMinutes - waitingMinutes);
  const different = [...new Set(inside)];
  return {
    ...(stated ? { stated } : {}),
    waitingMinutes: round(waitingMinutes),
    waiting: minutesText(waitingMinutes),
    ...(working !== undefined && working >= 0 && Number.isFinite(working)
      ? { working: minutesText(working), workingMinutes: working }
      : {}),
    waitingByVariant:
      different.length < 2
        ? []
        : different.flatMap((value) => {
            const set = minutes.map((one, combo) => one === value && job.within[combo]!);
            const when = job.combinations.when(set, job.within);
            return when ? [{ when, minutes: round(value), text: minutesText(value).text }] : [];
          }),
  };
}

/** s: the least that is waited in one combination. */
function waits(job: Job, items: readonly Written[], combo: number): number {
  let sum = 0;
  for (const one of items) {
    if (one.kind === 'action') {
      sum += actionSeconds(job, one.action);
      if (one.outcomes.length > 0)
        sum += Math.min(...one.outcomes.map((outcome) => waits(job, outcome.items, combo)));
    } else if (one.kind === 'branch') {
      const set = job.combinations.where(one.statement.condition);
      const body = () => waits(job, one.body, combo);
      const otherwise = () => waits(job, one.otherwise ?? [], combo);
      sum += set ? (set[combo] ? body() : otherwise()) : Math.min(body(), otherwise());
    } else if ('items' in one) sum += waits(job, one.items, combo);
  }
  return sum;
}

function actionSeconds(job: Job, action: Action): number {
  if (!IDLE.has(action.verb)) return 0;
  const typed = [
    action.quantity,
    ...action.tails.map((tail) => (tail.tail === 'for' ? tail.quantity : undefined)),
  ];
  return Math.max(0, ...typed.map((one) => seconds(job, one)));
}

/** The time that one step waits. */
export function waitOf(job: Job, action: Action): Measure | undefined {
  const value = actionSeconds(job, action);
  return value > 0 ? minutesText(value / 60) : undefined;
}

function seconds(job: Job, typed: Typed | undefined): number {
  const read = readTyped(typed, job.model.values);
  if (read?.unit.kind !== 'time') return 0;
  const { low } = bandIn(read, 's');
  return Number.isFinite(low) ? low : exact.toNumber(read.high ?? exact.rational(0));
}

/** `1 h 30 min`, `40 s`, `0 min` */
export function minutesText(minutes: number): Measure {
  const seconds = Math.round(minutes * 60);
  const parts = [
    [Math.floor(seconds / 3600), 'h'],
    [Math.floor((seconds % 3600) / 60), 'min'],
    [seconds % 60, 's'],
  ].flatMap(([count, unit]) => (count ? [`${count} ${unit}`] : []));
  const value = round(minutes);
  return { text: parts.join(' ') || '0 min', low: value, high: value, unit: 'min' };
}

function round(value: number): number {
  return Math.round(value * 100) / 100;
}
