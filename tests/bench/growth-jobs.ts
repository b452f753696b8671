/**
 * Jobs for measuring how checking grows with the number of axes, as texts. The same steps under as many
 * conditions for every number of axes: with none, there is one build only and every condition is met, so that
 * the job has one case.
 */
import { Random } from '../properties/random-job.ts';

export type Load =
  /** Every axis governs its own things. */
  | 'apart'
  /** Four axes meet on each thing. */
  | 'meeting'
  /** Random conditions over all axes on fifty things, which no way of telling cases apart is good at. */
  | 'hostile';

export interface GrowthJob {
  load: Load;
  steps: number;
  axes: number;
}

/** Actions of one visit to a cover: bolts out, cover off, clean it, cover on, bolts in. */
const VISIT = 5;
/** Covers that are open at the same time. */
const OPEN = 20;
const HOSTILE_THINGS = 50;
/** Covers on one housing. */
const HOUSING = 20;

export function growthJob(job: GrowthJob): string {
  if (job.load === 'hostile') return hostileJob(job.steps, job.axes);
  const visits = Math.ceil(job.steps / VISIT);
  const perCover = job.load === 'meeting' ? 4 : 1;
  const covers = Math.ceil(visits / perCover);
  const body: string[] = [];
  for (let first = 0; first < covers; first += OPEN) {
    const round = Array.from({ length: Math.min(OPEN, covers - first) }, (_, index) => first + index);
    for (let turn = 0; turn < perCover; turn++) {
      const block = (cover: number, ...actions: string[]) => [
        `  ${blockHead(job, cover, turn)} {`,
        ...actions.map((action) => `    ${action}`),
        '  }',
      ];
      for (const cover of round) body.push(...block(cover, `remove bolts-${cover}`, `remove cover-${cover}`));
      for (const cover of round) body.push(...block(cover, `clean cover-${cover}`));
      for (const cover of [...round].reverse())
        body.push(...block(cover, `refit cover-${cover}`, `refit bolts-${cover}`));
    }
  }
  return fileText(job.axes, covers, body, true);
}

function blockHead({ load, axes }: GrowthJob, cover: number, turn: number): string {
  const is = (offset: number, value = 'extended') =>
    axes === 0 ? 'build-1 is extended' : `build-${((cover + offset) % axes) + 1} is ${value}`;
  if (load === 'apart') return `when ${is(0)}`;
  // Every turn joins another one of the four axes; two of the conditions are about two of them.
  const conditions = [is(0), `${is(1)} and ${is(2, 'plain')}`, `${is(2)} and ${is(3, 'plain')}`, is(3)];
  return `when ${conditions[turn]}`;
}

function hostileJob(steps: number, axes: number): string {
  const random = new Random(axes);
  const body: string[] = [];
  for (let step = 0; step < steps; step++) {
    const cover = random.below(HOSTILE_THINGS);
    const asked = new Set<number>();
    while (asked.size < 3) asked.add(random.below(axes) + 1);
    const condition = [...asked].map((axis) => `build-${axis} is ${random.pick(['plain', 'extended'])}`);
    const verb = random.pick(['remove', 'refit']);
    body.push(`  when ${condition.join(' and ')} {`, `    ${verb} cover-${cover}`, '  }');
  }
  return fileText(axes, HOSTILE_THINGS, body, false);
}

function fileText(axes: number, covers: number, body: readonly string[], bolted: boolean): string {
  const housings = Array.from({ length: Math.ceil(covers / HOUSING) }, (_, index) => index);
  return [
    'machine bench "Bench machine" {',
    ...(axes === 0
      ? ['  variant build-1: extended']
      : Array.from({ length: axes }, (_, index) => `  variant build-${index + 1}: plain, extended`)),
    '  part frame "frame" fixed',
    ...housings.map((housing) => `  part housing-${housing} "housing ${housing}" on frame fixed`),
    ...Array.from({ length: covers }, (_, cover) => coverText(cover, bolted)),
    '}',
    '',
    'procedure job "Look at the covers"',
    '  for bench',
    '{',
    ...body,
    '}',
    '',
  ].join('\n');
}

function coverText(cover: number, bolted: boolean): string {
  const housing = `housing-${Math.floor(cover / HOUSING)}`;
  const part = `  part cover-${cover} "cover ${cover}" on ${housing}`;
  if (!bolted) return part;
  return `${part} held by bolts-${cover}\n  fastener bolts-${cover} "bolts of cover ${cover}" x4 clamps cover-${cover} to ${housing}`;
}
