/**
 * Random histories of one thing, as a tree of statements, and their text. The text is what the product reads;
 * the tree is what the formulas for the solver are made of (solver-formulas.ts), so that the product's reader
 * has no part in them. What each action needs and does is taken from grammar/STATE.md, "The actions".
 */
import { Random } from './random-job.ts';

export interface Kind {
  /** The line of the machine that declares it, without what variants have it. */
  declared: string;
  /** Its states; the first is how it stands at the start. */
  states: readonly string[];
  actions: readonly Act[];
  /** State words and the states that they mean. */
  words: Readonly<Record<string, readonly string[]>>;
  /** What is found at the end where it stands so. */
  left: Readonly<Record<string, string>>;
}

export interface Act {
  verb: string;
  makes: string;
  /** States in which the effect is there already. */
  already: readonly string[];
  putsBack: boolean;
  /** States in which it cannot be done, and the name of that finding. */
  cannot?: { states: readonly string[]; check: string };
}

const act = (verb: string, makes: string, more: Partial<Act> = {}): Act => ({
  verb,
  makes,
  already: [makes],
  putsBack: false,
  ...more,
});

export const KINDS: readonly Kind[] = [
  {
    declared: 'control it "valve" on base normally closed',
    states: ['closed', 'open'],
    actions: [act('open', 'open'), act('close', 'closed', { putsBack: true })],
    words: { open: ['open'], closed: ['closed'] },
    left: { open: 'left-open' },
  },
  {
    declared: 'control it "vent" on base normally open',
    states: ['open', 'closed'],
    actions: [act('close', 'closed'), act('open', 'open', { putsBack: true })],
    words: { open: ['open'], closed: ['closed'] },
    left: { closed: 'left-open' },
  },
  {
    declared: 'connection it "hose" joins tank to base',
    states: ['connected', 'disconnected', 'capped'],
    actions: [
      act('disconnect', 'disconnected', { already: ['disconnected', 'capped'] }),
      act('connect', 'connected', { putsBack: true }),
      act('cap', 'capped', { cannot: { states: ['connected'], check: 'wrong-verb' } }),
    ],
    words: { connected: ['connected'], disconnected: ['disconnected', 'capped'], capped: ['capped'] },
    left: { disconnected: 'left-disconnected', capped: 'left-disconnected' },
  },
  {
    declared: 'fastener it "plug" clamps lid to base',
    states: ['final', 'out', 'loose'],
    actions: [
      act('remove', 'out'),
      act('fit', 'final', { already: ['final', 'loose'], putsBack: true }),
      act('loosen', 'loose', { cannot: { states: ['out'], check: 'not-in-place' } }),
    ],
    words: { off: ['out'], loose: ['loose'], tight: ['final'] },
    left: { out: 'left-off', loose: 'left-loose' },
  },
  {
    declared: 'part it "guard" on base',
    states: ['fitted', 'off'],
    actions: [act('remove', 'off'), act('refit', 'fitted', { putsBack: true })],
    words: { off: ['off'], fitted: ['fitted'] },
    left: { off: 'left-off' },
  },
  {
    declared: 'system it "mains" live 400 V isolated at breaker',
    states: ['live', 'isolated'],
    actions: [act('isolate', 'isolated'), act('restore', 'live', { putsBack: true })],
    words: { isolated: ['isolated'], live: ['live'] },
    left: { isolated: 'left-isolated' },
  },
];

/** An axis by name (`v0`, `c1`, `seen 2`, `outcome s3`) and how many values it has. */
export interface Axis {
  name: string;
  width: number;
}

export type Question =
  | { ask: 'axis'; axis: string; values: number[]; negated: boolean }
  | { ask: 'state'; word: string; negated: boolean }
  | { ask: 'both'; left: Question; right: Question };

export type Line =
  | { line: 'act'; tag: number; act: Act }
  | { line: 'branch'; question: Question; body: Line[]; otherwise: Line[] }
  | { line: 'outcomes'; axis: string; tag: number; bodies: Line[][] }
  | { line: 'choice'; axis: Axis }
  | { line: 'stop' };

export interface History {
  kind: Kind;
  axes: Axis[];
  /** The variants that have the thing; undefined where all have. */
  only: Question | undefined;
  body: Line[];
}

const MOST_AXES = 7;

export function randomHistory(seed: number): History {
  const random = new Random(seed);
  const kind = KINDS[seed % KINDS.length]!;
  const variants = Array.from({ length: 1 + random.below(3) }, (_, index) => ({
    name: `v${index}`,
    width: 2 + random.below(3),
  }));
  const axes: Axis[] = [...variants];
  // Choices are made before they are asked about, and in every case: at the outermost level only.
  const askable: Axis[] = [...variants];
  let tags = 0;
  let seen = 0;

  const some = (width: number) => {
    const values = Array.from({ length: width }, (_, value) => value).filter(() => random.chance(0.5));
    return values.length === 0 ? [random.below(width)] : values;
  };
  const question = (depth = 0): Question => {
    const roll = random.below(10);
    if (depth === 0 && roll === 0) return { ask: 'both', left: question(1), right: question(1) };
    if (roll <= 2)
      return { ask: 'state', word: random.pick(Object.keys(kind.words)), negated: random.chance(0.3) };
    if (roll <= 5) {
      // The same words are the same finding: some are asked again.
      const again = axes.filter(({ name }) => name.startsWith('seen'));
      if (again.length > 0 && (random.chance(0.5) || axes.length >= MOST_AXES))
        return { ask: 'axis', axis: random.pick(again).name, values: [0], negated: false };
      if (axes.length < MOST_AXES) {
        axes.push({ name: `seen ${seen++}`, width: 2 });
        return { ask: 'axis', axis: axes.at(-1)!.name, values: [0], negated: false };
      }
    }
    const axis = random.pick(askable);
    return { ask: 'axis', axis: axis.name, values: some(axis.width), negated: random.chance(0.25) };
  };
  const block = (depth: number, length: number): Line[] => {
    const lines: Line[] = [];
    for (let i = 0; i < length; i++) {
      const roll = random.below(20);
      if (depth < 4 && roll < 6) {
        lines.push({
          line: 'branch',
          question: question(),
          body: block(depth + 1, 1 + random.below(3)),
          otherwise: random.chance(0.4) ? block(depth + 1, 1 + random.below(2)) : [],
        });
      } else if (depth < 3 && roll === 6 && axes.length < MOST_AXES) {
        const tag = tags++;
        const axis = { name: `outcome s${tag}`, width: 2 + random.below(2) };
        axes.push(axis);
        const bodies = Array.from({ length: axis.width }, () => block(depth + 1, random.below(3)));
        lines.push({ line: 'outcomes', axis: axis.name, tag, bodies });
      } else if (depth === 0 && roll === 7 && axes.length < MOST_AXES) {
        const axis = { name: `c${axes.length}`, width: 2 + random.below(2) };
        axes.push(axis);
        askable.push(axis);
        lines.push({ line: 'choice', axis });
      } else if (depth > 0 && roll === 8) {
        lines.push({ line: 'stop' });
        break;
      } else lines.push({ line: 'act', tag: tags++, act: random.pick(kind.actions) });
    }
    return lines;
  };
  const only: Question | undefined = random.chance(0.3)
    ? { ask: 'axis', axis: 'v0', values: some(variants[0]!.width), negated: false }
    : undefined;
  return { kind, axes, only, body: block(0, 4 + random.below(6)) };
}

const VALUES = 'abcd';

export function textOf({ kind, axes, only, body }: History): string {
  const values = (width: number) => Array.from({ length: width }, (_, value) => VALUES[value]).join(', ');
  const variants = axes.filter(({ name }) => /^v\d/.test(name));
  return [
    'machine m "m" {',
    ...variants.map(({ name, width }) => `  variant ${name}: ${values(width)}`),
    '  part base "base" fixed',
    '  part tank "tank" fixed',
    '  part lid "lid" on base',
    '  isolator breaker "breaker"',
    `  ${kind.declared}${only ? ` only ${questionText(only)}` : ''}`,
    '}',
    'procedure p "p" for m {',
    ...linesText(body, '  ', values),
    '}',
    '',
  ].join('\n');
}

function linesText(lines: readonly Line[], indent: string, values: (width: number) => string): string[] {
  return lines.flatMap((line) => {
    const inner = (body: readonly Line[]) => linesText(body, `${indent}  `, values);
    switch (line.line) {
      case 'act':
        return [`${indent}${line.act.verb} it "s${line.tag}"`];
      case 'stop':
        return [`${indent}stop "no more"`];
      case 'choice':
        return [`${indent}choice ${line.axis.name}: ${values(line.axis.width)}`];
      case 'outcomes':
        return [
          `${indent}inspect base "s${line.tag}" {`,
          ...line.bodies.flatMap((body, value) => [
            `${indent}  ${['good', 'worn', 'cracked'][value]} {`,
            ...linesText(body, `${indent}    `, values),
            `${indent}  }`,
          ]),
          `${indent}}`,
        ];
      case 'branch':
        return [
          `${indent}${onVariants(line.question) ? 'when' : 'if'} ${questionText(line.question)} {`,
          ...inner(line.body),
          ...(line.otherwise.length > 0 ? [`${indent}} otherwise {`, ...inner(line.otherwise)] : []),
          `${indent}}`,
        ];
    }
    return line satisfies never;
  });
}

function onVariants(question: Question): boolean {
  if (question.ask === 'both') return onVariants(question.left) && onVariants(question.right);
  return question.ask === 'axis' && !question.axis.startsWith('seen');
}

function questionText(question: Question): string {
  if (question.ask === 'both') return `${questionText(question.left)} and ${questionText(question.right)}`;
  const not = question.negated ? 'not ' : '';
  if (question.ask === 'state') return `it ${not}${question.word}`;
  if (question.axis.startsWith('seen')) return `"${question.axis}"`;
  return `${question.axis} is ${not}${question.values.map((value) => VALUES[value]).join(' or ')}`;
}
