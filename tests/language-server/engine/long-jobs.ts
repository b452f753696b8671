/**
 * Long procedures in one piece, by chance and from a seed, with all that looks back over the steps: notices and
 * hazards, weights, energy, measured values, branches, repeats, tasks that are used again and mirrored. They make no sense as
 * jobs; most steps are wrong in some case. And edits of them, as an author makes them: a line more, a line less, a
 * line elsewhere, a word changed, a letter typed.
 */
import { linesIn } from '../../../language-server/engine/line-space.ts';
import type { Edit } from './random-edits.ts';

type Next = () => number;

const pick = <One>(next: Next, list: readonly One[]): One => list[Math.floor(next() * list.length)]!;

export const PARTS = 8;

export function machine(next: Next): string {
  const lines = [
    'variant build: plain, extended',
    'part frame "frame" fixed',
    'fluid oil "oil" hazard hot when draining',
    'consumable paste "paste" curing time 2 h',
    'system sump "sump" holds 2 L oil drained at tap pressure 3 bar hazard pressure can kill',
    'system mains "mains" live 400 V isolated at breaker proved with tester hazard live can kill',
    'system coolant "coolant" needs bleeding hot',
    'control tap "tap" on frame normally closed',
    'control valve "valve" on frame',
    'isolator breaker "breaker"',
    'tool tester "tester"',
    'tool hoist "hoist"',
    'tool gauge "gauge"',
    'connection earth "earth lead" joins battery to frame first off',
    'connection plus "plus lead" joins battery to frame',
    'part battery "battery" on frame mass 31 kg hazard lifting when removing, fitting',
  ];
  for (let index = 0; index < PARTS; index++) {
    const on = index > 0 && next() < 0.4 ? `part-${Math.floor(next() * index)}` : 'frame';
    const more = [
      next() < 0.3 ? 'opens sump' : '',
      next() < 0.15 ? 'opens mains' : '',
      next() < 0.3 ? `mass ${5 + Math.floor(next() * 60)} kg` : '',
      next() < 0.2 ? 'hazard falling can kill' : '',
      next() < 0.2 ? 'matched' : '',
      next() < 0.2 ? 'only build is extended' : '',
    ];
    lines.push(`part part-${index} "part ${index}" on ${on} held by bolts-${index} ${more.join(' ')}`);
    lines.push(`fastener bolts-${index} "bolts ${index}" x${1 + Math.floor(next() * 4)} torque 20 N·m`);
    if (next() < 0.5)
      lines.push(`seal seal-${index} "seal ${index}" single-use seals part-${index} coated with paste`);
  }
  return `machine m "m" {\n  ${lines.join('\n  ')}\n}\n`;
}

/** One step that stands by itself, without its indentation. */
export function step(next: Next): string {
  const index = Math.floor(next() * PARTS);
  const text = next() < 0.3 ? ` "Look at it ${Math.floor(next() * 50)} times."` : '';
  const kinds = [
    () =>
      `${pick(next, ['remove', 'refit', 'unbolt', 'bolt up', 'fit new', 'move aside'])} part-${index}${text}`,
    () => `${pick(next, ['remove', 'refit', 'loosen', 'tighten'])} bolts-${index}${text}`,
    () => `${pick(next, ['inspect', 'clean', 'mark', 'lower'])} part-${index}${text}`,
    () => `support part-${index} with hoist`,
    () => `remove hoist`,
    () => `measure part-${index} as gap-${index % 3} with gauge`,
    () => `choose part-${index} by gap-${index % 3}`,
    () =>
      pick(next, ['open tap', 'close tap', 'open valve', 'close valve', 'drain sump', 'fill sump with oil']),
    () =>
      pick(next, ['relieve sump', 'pressurise sump', 'bleed coolant', 'let cool coolant', 'run', 'wait 1 h']),
    () =>
      pick(next, [
        'isolate mains',
        'restore mains',
        'prove mains safe',
        'lock out breaker',
        'unlock breaker',
      ]),
    () =>
      pick(next, ['disconnect earth', 'disconnect plus', 'connect earth', 'connect plus', 'remove battery']),
    () => `danger ${pick(next, ['live', 'pressure', 'falling', 'hot'])} "It can kill. Keep away from it."`,
    () => `caution ${pick(next, ['lifting', 'pressure', 'hot'])} "It can hurt. Keep away from it."`,
  ];
  return pick(next, kinds)();
}

/** Lines of the body, each with its indentation. */
function lines(next: Next, count: number, tasks: string[], indent = '  ', depth = 0): string[] {
  const all: string[] = [];
  while (all.length < count) {
    const kind = Math.floor(next() * 40);
    const inner = () => lines(next, 1 + Math.floor(next() * 3), tasks, `${indent}  `, depth + 1);
    if (depth < 3 && kind === 0)
      all.push(`${indent}when build is ${pick(next, ['plain', 'extended'])} {`, ...inner());
    else if (depth < 3 && kind === 1)
      all.push(`${indent}if "it is worn ${Math.floor(next() * 3)}" {`, ...inner());
    else if (depth < 3 && kind === 2)
      all.push(`${indent}repeat until "it fits" at most 3 times {`, ...inner());
    else if (depth < 3 && kind === 3)
      all.push(`${indent}if part-${Math.floor(next() * PARTS)} off {`, ...inner());
    else if (depth < 3 && kind === 4) all.push(`${indent}step "A step" {`, ...inner());
    else if (depth < 2 && kind <= 6) {
      const name = `task-${tasks.length}`;
      tasks.push(name);
      all.push(`${indent}task ${name} "A task" {`, ...lines(next, 6, tasks, `${indent}  `, depth + 1));
    } else if (kind === 8) {
      all.push(`${indent}do ${pick(next, ['prepare', 'finish', 'printed'])}`);
      continue;
    } else if (kind === 7 && tasks.length > 0 && next() < 0.3) {
      all.push(`${indent}${pick(next, ['do', 'reverse'])} ${pick(next, tasks)}`);
      continue;
    } else {
      all.push(`${indent}${step(next)}`);
      continue;
    }
    all.push(`${indent}}`);
  }
  return all;
}

/** Procedures that others use: one has a fault of its own, one shows faults only where it is used, one has no steps. */
const USED = `procedure prepare "Prepare" for m ends with breaker locked, mains off {
  isolate mains
  lock out breaker
  inspect frame "Is it straight?" {
    straight { }
    bent { remove part-1 }
  }
}
procedure finish "Finish" for m starts with part-0 fitted {
  remove bolts-2
  refit part-2
  measure part-3 as gap-1 with gauge
}
procedure printed "As printed" for m elsewhere "Sheet 3" ends with sump drained
`;

/** A machine and a procedure of about so many lines. */
export function longJob(next: Next, count: number): string {
  return `${machine(next)}\n${USED}\nprocedure p "Work on it" for m${pick(next, ['', ' people 1'])} {\n${lines(next, count, []).join('\n')}\n}\n`;
}

/** An edit inside the procedure that leaves most of it as it is. */
export function lineEdit(text: string, next: Next): Edit {
  const all = linesIn(text);
  const first = all.findIndex((line) => line.startsWith('procedure p ')) + 1;
  const line = first + Math.floor(next() * (all.length - first - 2));
  const at = (row: number, column = 0) => ({ line: row, column });
  const words = all[line]!.replace(/[\r\n]+$/, '');
  const indent = /^ */.exec(words)![0];
  const isStep = !/[{}]/.test(words) && words.trim() !== '';
  switch (Math.floor(next() * 8)) {
    case 0:
    case 1:
      return { start: at(line), end: at(line), text: `${indent}${step(next)}\n` };
    case 2:
      if (isStep) return { start: at(line), end: at(line + 1), text: '' };
      break;
    case 3: {
      const other = all[first + Math.floor(next() * (all.length - first - 2))]!;
      if (!/[{}]/.test(other)) return { start: at(line), end: at(line), text: other };
      break;
    }
    case 4:
      if (isStep) return { start: at(line), end: at(line, words.length), text: `${indent}${step(next)}` };
      break;
    case 5: {
      // Two lines change places.
      const other = all[line + 1];
      if (isStep && other && !/[{}]/.test(other) && /\n$/.test(all[line]!))
        return { start: at(line), end: at(line + 2), text: other + all[line]! };
      break;
    }
    case 6: {
      const to = words.indexOf('"');
      if (to >= 0) return { start: at(line, to + 1), end: at(line, to + 1), text: 'x' };
      break;
    }
    default:
  }
  const column = indent.length + Math.floor(next() * (words.length - indent.length + 1));
  return next() < 0.5
    ? { start: at(line, column), end: at(line, column), text: pick(next, ['x', ' ', '1', '-']) }
    : { start: at(line, Math.max(0, column - 1)), end: at(line, column), text: '' };
}
