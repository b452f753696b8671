/**
 * Random machines and procedures as texts, with all constructs that fork, for comparing all cases at once with
 * each case alone. They make no sense as jobs: most steps are wrong in some case, which is what is wanted.
 * Every action carries a tag in quotes, so that a finding can be found again in another version of the text.
 */

export class Random {
  private state: number;
  constructor(seed: number) {
    this.state = (seed * 2_654_435_761 + 1) >>> 0;
  }
  /** mulberry32 */
  next(): number {
    this.state = (this.state + 0x6d2b79f5) >>> 0;
    let t = this.state;
    t = Math.imul(t ^ (t >>> 15), t | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 4_294_967_296;
  }
  below(n: number): number {
    return Math.floor(this.next() * n);
  }
  chance(p: number): boolean {
    return this.next() < p;
  }
  pick<T>(list: readonly T[]): T {
    return list[this.below(list.length)]!;
  }
}

export interface RandomJob {
  machine: string;
  procedure: string;
}

export function randomJob(seed: number, axes: number): RandomJob {
  const random = new Random(seed);
  const variants = 1 + random.below(Math.max(1, Math.min(axes, 4)));
  const machine = randomMachine(random, variants);
  return { machine: machine.text, procedure: randomProcedure(random, machine, variants, axes) };
}

interface RandomMachine {
  text: string;
  parts: string[];
  fasteners: string[];
  seals: string[];
  joints: string[];
}

function randomMachine(random: Random, variants: number): RandomMachine {
  const lines: string[] = [];
  for (let i = 0; i < variants; i++) lines.push(`  variant v${i}: a, b`);
  lines.push('  part base "base" fixed');
  lines.push('  fluid oil "oil"');
  lines.push('  system sump "sump" holds 2 L oil drained at tap');
  lines.push('  system mains "mains" live 400 V isolated at breaker proved with tester');
  lines.push('  control tap "tap" on base normally closed');
  lines.push('  isolator breaker "breaker"');
  lines.push('  tool tester "tester"');
  const parts: string[] = [];
  const fasteners: string[] = [];
  const seals: string[] = [];
  const joints: string[] = [];
  const only = () =>
    random.chance(0.2) ? ` only v${random.below(variants)} is ${random.pick(['a', 'b'])}` : '';
  const count = 3 + random.below(4);
  for (let i = 0; i < count; i++) {
    // What holds or joins a part is there where the part is, or in fewer variants: never only without it.
    const where = only();
    const within = () => where || only();
    const clauses: string[] = [`on ${i > 0 && random.chance(0.5) ? `part-${random.below(i)}` : 'base'}`];
    if (i > 0 && random.chance(0.3)) clauses.push(`under part-${random.below(count)}`);
    if (random.chance(0.7)) {
      clauses.push(`held by bolts-${i}`);
      fasteners.push(`bolts-${i}`);
      const size = random.below(3) + 1;
      lines.push(
        `  fastener bolts-${i} "bolts ${i}" x${size}${random.chance(0.2) ? ' single-use' : ''}${within()}`,
      );
    }
    if (random.chance(0.4)) {
      clauses.push(`sealed by seal-${i}`);
      seals.push(`seal-${i}`);
      lines.push(`  seal seal-${i} "seal ${i}"${random.chance(0.5) ? ' single-use' : ''}`);
    }
    if (random.chance(0.3)) {
      joints.push(`pipe-${i}`);
      lines.push(
        `  connection pipe-${i} "pipe ${i}" joins part-${i} to base${random.chance(0.4) ? ' opens sump' : ''}${within()}`,
      );
    }
    if (random.chance(0.2)) clauses.push('opens mains');
    if (random.chance(0.15)) clauses.push('matched');
    parts.push(`part-${i}`);
    lines.push(`  part part-${i} "part ${i}" ${clauses.join(' ')}${where}`);
  }
  // A part under itself or a ring of covers is a machine fault, and no concern of the steps.
  const text = `machine m "m" {\n${lines.filter((line) => !/part (part-\d+) .*under \1\b/.test(line)).join('\n')}\n}\n`;
  return { text, parts: parts.filter((part) => text.includes(`part ${part} `)), fasteners, seals, joints };
}

function randomProcedure(random: Random, machine: RandomMachine, variants: number, axes: number): string {
  let tag = 0;
  let forks = axes - variants;
  const lines: string[] = ['procedure p "p" for m {'];
  const choices: string[] = [];
  const action = (indent: string): string => {
    const { parts, fasteners, seals, joints } = machine;
    const text = `"s${tag++}"`;
    const kinds: (() => string)[] = [
      () =>
        `${random.pick(['remove', 'refit', 'fit new', 'unbolt', 'bolt up', 'trial fit', 'mark', 'clean', 'move aside', 'move back'])} ${random.pick(parts)}`,
      () => `remove ${random.pick(parts)} ${text} and discard`,
      () =>
        fasteners.length > 0
          ? `${random.pick(['remove', 'fit', 'fit new', 'loosen', 'tighten'])} ${random.pick(fasteners)}`
          : `clean ${random.pick(parts)}`,
      () => (fasteners.length > 0 ? `fit ${random.pick(fasteners)} by hand` : `clean ${random.pick(parts)}`),
      () =>
        seals.length > 0
          ? `${random.pick(['remove', 'fit', 'fit new'])} ${random.pick(seals)}`
          : `mark ${random.pick(parts)}`,
      () =>
        joints.length > 0
          ? `${random.pick(['connect', 'disconnect', 'cap'])} ${random.pick(joints)}`
          : `turn ${random.pick(parts)}`,
      () =>
        random.pick([
          'open tap',
          'close tap',
          'drain sump',
          'fill sump',
          'top up sump',
          'isolate mains',
          'restore mains',
          'prove mains safe',
          'lock out breaker',
          'unlock breaker',
        ]),
    ];
    const chosen = random.pick(kinds)();
    return `${indent}${chosen.includes(text) ? chosen : `${chosen} ${text}`}`;
  };
  const block = (indent: string, depth: number, length: number): void => {
    for (let i = 0; i < length; i++) {
      if (depth >= 3 || !random.chance(0.35)) {
        lines.push(action(indent));
        continue;
      }
      const inner = 1 + random.below(3);
      const kind = random.below(8);
      if (kind <= 1) {
        lines.push(`${indent}when v${random.below(variants)} is ${random.pick(['a', 'b'])} {`);
        block(`${indent}  `, depth + 1, inner);
        if (random.chance(0.4)) {
          lines.push(`${indent}} otherwise {`);
          block(`${indent}  `, depth + 1, inner);
        }
        lines.push(`${indent}}`);
      } else if (kind === 2 && forks > 0) {
        forks--;
        lines.push(`${indent}if "seen ${forks}" {`);
        block(`${indent}  `, depth + 1, inner);
        lines.push(`${indent}} otherwise {`);
        block(`${indent}  `, depth + 1, inner);
        lines.push(`${indent}}`);
      } else if (kind === 3 && forks > 0 && depth === 0) {
        forks--;
        lines.push(`${indent}choice c${forks}: x, y`);
        choices.push(`c${forks}`);
      } else if (kind === 4 && choices.length > 0) {
        lines.push(`${indent}when ${random.pick(choices)} is ${random.pick(['x', 'y'])} {`);
        block(`${indent}  `, depth + 1, inner);
        lines.push(`${indent}}`);
      } else if (kind === 5 && forks > 0) {
        forks--;
        lines.push(`${indent}inspect base "s${tag++}" {`);
        lines.push(`${indent}  good {`);
        block(`${indent}    `, depth + 2, inner);
        lines.push(`${indent}  }`, `${indent}  worn {`);
        block(`${indent}    `, depth + 2, inner);
        lines.push(`${indent}  }`, `${indent}}`);
      } else if (kind === 6) {
        lines.push(`${indent}if ${random.pick(machine.parts)} off {`);
        block(`${indent}  `, depth + 1, inner);
        lines.push(`${indent}}`);
      } else if (kind === 7 && depth === 0) {
        lines.push(`${indent}repeat until "right" at most 3 times {`);
        for (let k = 0; k < inner; k++) lines.push(action(`${indent}  `));
        lines.push(`${indent}}`);
      } else lines.push(action(indent));
    }
  };
  block('  ', 0, (axes > 6 ? axes : 5) + random.below(8));
  // A job that may have many axes gets most of them.
  while (axes > 6 && forks > 4) {
    forks--;
    lines.push(`  if "seen ${forks}" {`);
    block('    ', 2, 2);
    lines.push('  } otherwise {');
    block('    ', 2, 1);
    lines.push('  }');
  }
  if (random.chance(0.15)) lines.push(`  when v0 is a { stop "no more" }`);
  lines.push('}');
  return lines.join('\n');
}
