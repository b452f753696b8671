/**
 * One invented job of any length, as plain facts: what the machine is made of and what is done. The same
 * facts are then written in each notation that is compared (in-dowel.ts, in-xml.ts, in-json.ts).
 */

export interface Part {
  id: string;
  /** What it sits on. */
  housing: string;
  title: string;
  bolts: string;
  count: number;
  thread: string;
  /** Newton metres. */
  torque: number;
  /** Set where the part is there in one build only. */
  axis?: string;
}

export type Verb = 'remove' | 'inspect' | 'clean' | 'refit';

export interface Action {
  verb: Verb;
  ref: string;
  /** What the inspection looks for. */
  for?: string;
  /** A sentence for the reader. */
  text?: string;
}

/** Actions on one part that stand together, under the condition of its axis where it has one. */
export interface Group {
  axis?: string;
  actions: Action[];
}

export interface Task {
  name: string;
  title: string;
  groups: Group[];
}

export interface Content {
  axes: string[];
  /** Fixed, with twenty parts on each: a machine is made of assemblies, not of a thousand parts on one frame. */
  housings: string[];
  parts: Part[];
  tasks: Task[];
  /** Actions in all. */
  steps: number;
}

const AXES = 20;
/** Parts that one round of strip, look at and rebuild is about. */
const ROUND = 20;
/** Actions on one part: remove bolts, remove part, inspect, refit part, refit bolts. */
const ACTIONS = 5;
const THREADS = [
  ['M6x1', 8],
  ['M8x1.25', 20],
  ['M10x1.5', 40],
] as const;

/** Two parts for every five steps, as many as `most` at most; longer jobs go round them again. */
export function contentOf({ steps, most = 2000 }: { steps: number; most?: number }): Content {
  const axes = Array.from({ length: AXES }, (_, index) => `build-${index + 1}`);
  const parts = Array.from({ length: Math.min(most, Math.max(ROUND, (steps * 2) / 5)) }, (_, index) =>
    partOf(index, axes),
  );
  const housings = [...new Set(parts.map((part) => part.housing))];
  const visits = Math.ceil(steps / ACTIONS);
  const tasks: Task[] = [];
  for (let visit = 0; visit < visits; visit += ROUND) {
    const round = Array.from(
      { length: Math.min(ROUND, visits - visit) },
      (_, index) => parts[(visit + index) % parts.length]!,
    );
    tasks.push(...tasksOf(tasks.length, round));
  }
  return { axes, housings, parts, tasks, steps: visits * ACTIONS };
}

function partOf(index: number, axes: readonly string[]): Part {
  const [thread, torque] = THREADS[index % THREADS.length]!;
  return {
    id: `cover-${index + 1}`,
    housing: `housing-${Math.floor(index / ROUND) + 1}`,
    title: `inspection cover ${index + 1}`,
    bolts: `cover-bolts-${index + 1}`,
    count: 4 + (index % 5),
    thread,
    torque,
    // Every eighth part is there in one of two builds; the axes take turns.
    ...(index % 8 === 7 ? { axis: axes[Math.floor(index / 8) % axes.length]! } : {}),
  };
}

function tasksOf(number: number, round: readonly Part[]): Task[] {
  const group = (part: Part, actions: Action[]): Group => ({
    ...(part.axis === undefined ? {} : { axis: part.axis }),
    actions,
  });
  const strip = round.map((part, index) =>
    group(part, [
      {
        verb: 'remove',
        ref: part.bolts,
        ...(index % 4 === 0 ? { text: 'Keep them with their cover.' } : {}),
      },
      { verb: 'remove', ref: part.id },
    ]),
  );
  const look = round.map((part) => group(part, [{ verb: 'inspect', ref: part.id, for: 'cracks and wear' }]));
  const rebuild = [...round].reverse().map((part) =>
    group(part, [
      { verb: 'refit', ref: part.id, text: 'See that it sits flat all round.' },
      { verb: 'refit', ref: part.bolts },
    ]),
  );
  const titled = (name: string, title: string, groups: Group[]): Task => ({
    name: `${name}-${number / 3 + 1}`,
    title,
    groups,
  });
  return [
    titled('strip', 'Take the covers off', strip),
    titled('look', 'Look at the covers', look),
    titled('rebuild', 'Put the covers back', rebuild),
  ];
}
