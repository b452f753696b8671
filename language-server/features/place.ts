/** What stands at a place of a file: the name there, what it means, and everything else that means the same. */
import type { Machine, Name, Procedure, Span } from '../../grammar/syntax/tree.ts';
import { buildModel } from '../model/build.ts';
import type { Model, Thing } from '../model/model.ts';
import { findMachine, type LoadedFile, Loader } from '../model/names.ts';
import type { SourceHost } from '../project/project.ts';
import type { Place } from '../report/finding.ts';

export interface Meant {
  name: Name;
  thing: Thing;
  model: Model;
  file: LoadedFile;
  /** Where the name stands in a procedure. */
  procedure?: Procedure;
}

/** The thing that is named at an offset; undefined where none is. */
export function thingAt(host: SourceHost, path: string, offset: number): Meant | undefined {
  const loader = new Loader(host);
  const file = loader.load(path);
  if (!file) return undefined;
  const name = namesIn(file.parsed.tree).find((one) => one.start <= offset && offset <= one.end);
  if (!name) return undefined;
  const owner = ownerAt(loader, file, offset);
  if (!owner) return undefined;
  const { model } = buildModel(owner.machine, owner.file, loader.visible(owner.file));
  const thing = model.byName.get(name.text);
  return thing && { name, thing, model, file, ...(owner.procedure ? { procedure: owner.procedure } : {}) };
}

/** Everywhere in the files that the thing at an offset is named, its declaration included. */
export function placesOf(host: SourceHost, paths: readonly string[], meant: Meant): Place[] {
  const loader = new Loader(host);
  const places: Place[] = [];
  for (const path of paths) {
    const file = loader.load(path);
    if (!file || !loader.visible(file).some((one) => one.path === meant.thing.place.file)) continue;
    for (const name of namesIn(file.parsed.tree)) {
      if (name.text === meant.thing.name) places.push({ file: path, start: name.start, end: name.end });
    }
  }
  return places;
}

function ownerAt(
  loader: Loader,
  file: LoadedFile,
  offset: number,
): { machine: Machine | undefined; file: LoadedFile; procedure?: Procedure } | undefined {
  const inside = (span: Span) => span.start <= offset && offset <= span.end;
  const machine = file.machines.find(inside);
  if (machine) return { machine, file };
  const procedure = file.procedures.find(inside);
  if (!procedure) return file.shared.some(inside) ? { machine: undefined, file } : undefined;
  const header = procedure.headers.find((one) => one.header === 'for');
  const ref = header?.header === 'for' ? header.refs[0] : undefined;
  const found = ref && findMachine(loader.visible(file), ref.name.text);
  return found && { ...found, procedure };
}

/** Every name that can mean a thing, in reading order: all nodes with a text and nothing else to them. */
function namesIn(tree: object): Name[] {
  const names: Name[] = [];
  const visit = (node: unknown, key: string): void => {
    if (Array.isArray(node)) for (const one of node) visit(one, key);
    else if (typeof node === 'object' && node !== null) {
      const candidate = node as Partial<Name> & { kind?: string };
      if (typeof candidate.text === 'string' && typeof candidate.start === 'number' && key !== 'word')
        names.push(candidate as Name);
      else for (const [name, value] of Object.entries(node)) visit(value, name);
    }
  };
  visit(tree, '');
  return names.sort((a, b) => a.start - b.start);
}
