/**
 * The oracle's own small reader of `.dowel` text, written from the language reference alone. It reads
 * well-formed files; it throws on anything it does not know, so that gaps are seen.
 */
import { Cursor } from './cursor.ts';
import { tokensOf } from './lexer.ts';
import { atItem, emptyMachine, readItem, readMachine } from './read-machine.ts';
import { readProcedure } from './read-procedure.ts';
import type { Clause, Declaration, DowelFile, Machine, Procedure } from './shape.ts';

export function readFile(source: string): DowelFile {
  const c = new Cursor(tokensOf(source));
  const file: DowelFile = { uses: [], machines: [], loose: emptyMachine(''), procedures: [] };
  while (c.peek()) {
    if (c.takeWords('use')) file.uses.push(c.takeText() ?? c.fail('a path'));
    else if (c.takeWords('machine')) file.machines.push(readMachine(c));
    else if (c.takeWords('procedure')) file.procedures.push(readProcedure(c));
    else if (atItem(c)) readItem(c, file.loose);
    else c.fail('use, machine, procedure or a declaration');
  }
  return file;
}

/** A file with everything it uses; what is not the file itself is read once per text. */
export interface Reading {
  file: DowelFile;
  machines: Map<string, Machine>;
  procedures: Map<string, Procedure>;
  loose: Machine[];
  /** Equal keys: equal machines. */
  key: string;
}

const READ = new Map<string, DowelFile>();

export function readAll(files: Readonly<Record<string, string>>, path: string): Reading {
  const reading: Reading = {
    file: readFile(need(files, path)),
    machines: new Map(),
    procedures: new Map(),
    loose: [],
    key: '',
  };
  const seen = new Set<string>();
  const visit = (at: string, file: DowelFile) => {
    seen.add(at);
    for (const use of file.uses) {
      const target = resolve(at, use);
      if (seen.has(target)) continue;
      const source = need(files, target);
      const used = READ.get(source) ?? readFile(source);
      READ.set(source, used);
      reading.key += `${target}\n${source}\n`;
      visit(target, used);
    }
    for (const machine of file.machines) reading.machines.set(machine.name, machine);
    for (const procedure of file.procedures) reading.procedures.set(procedure.name, procedure);
    reading.loose.push(file.loose);
  };
  visit(path, reading.file);
  const own = reading.file;
  if (own.machines.length > 0 || own.loose.declarations.length > 0) {
    reading.key += JSON.stringify([own.machines, own.loose]);
  }
  return reading;
}

function need(files: Readonly<Record<string, string>>, path: string): string {
  const source = files[path];
  if (source === undefined) throw new Error(`no file ${path}`);
  return source;
}

/** `use` is relative to the folder of the file it stands in. */
function resolve(from: string, use: string): string {
  const steps = from.split('/').slice(0, -1);
  for (const step of use.split('/')) {
    if (step === '..') steps.pop();
    else if (step !== '.') steps.push(step);
  }
  return steps.join('/');
}

/** The machine with what it extends, with loose declarations, and with `like` written out. */
export function wholeMachine(reading: Reading, name: string): Machine {
  const whole = emptyMachine(name);
  const chain: Machine[] = [];
  for (let at: string | undefined = name; at !== undefined; ) {
    const machine: Machine | undefined = reading.machines.get(at);
    if (!machine) throw new Error(`no machine ${at}`);
    if (chain.includes(machine)) throw new Error(`machine ${at} extends itself`);
    chain.unshift(machine);
    at = machine.extends;
  }
  const byName = new Map<string, Declaration>();
  for (const machine of [...reading.loose, ...chain]) {
    for (const declaration of machine.declarations) {
      const before = byName.get(declaration.name);
      byName.set(declaration.name, before ? laidOver(before, declaration) : declaration);
    }
    whole.coupled.push(...machine.coupled);
    whole.variants.push(...machine.variants);
    whole.nevers.push(...machine.nevers);
  }
  const written = (declaration: Declaration, depth = 0): Declaration => {
    if (depth > 20) throw new Error(`${declaration.name} is like itself`);
    const like = declaration.clauses.find((clause) => clause.clause === 'like');
    const model = like?.refs[0] && byName.get(like.refs[0].name);
    if (like && !model) throw new Error(`nothing is called ${like.refs[0]?.name}`);
    return model ? laidOver(written(model, depth + 1), declaration) : declaration;
  };
  whole.declarations = [...byName.values()].map((declaration) => written(declaration));
  return whole;
}

/** The clauses of the one below, replaced by those of the same word in the one on top. */
function laidOver(below: Declaration, top: Declaration): Declaration {
  const word = (clause: Clause) => (clause.clause === 'positions' ? 'count' : clause.clause);
  const own = new Set(top.clauses.map(word));
  return { ...top, clauses: [...below.clauses.filter((clause) => !own.has(word(clause))), ...top.clauses] };
}
