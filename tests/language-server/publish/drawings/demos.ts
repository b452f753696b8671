/** The demo machines and procedures, read and carried out for tests of drawings. */
import { readdirSync, readFileSync } from 'node:fs';
import { dirname, join, posix } from 'node:path';
import { fileURLToPath } from 'node:url';
import { parseStringPromise } from 'xml2js';
import type { Procedure } from '../../../../grammar/syntax/tree.ts';
import { type Execution, execute } from '../../../../language-server/execution/execute.ts';
import { SharedWork } from '../../../../language-server/execution/shared-work.ts';
import { buildModel } from '../../../../language-server/model/build.ts';
import type { Model } from '../../../../language-server/model/model.ts';
import { findMachine, Loader } from '../../../../language-server/model/names.ts';
import type { SourceHost } from '../../../../language-server/project/project.ts';

const ROOT = join(dirname(fileURLToPath(import.meta.url)), '../../../../procedures');

/** Every right demo text by its path; the broken ones are left out. */
export const TEXTS: Readonly<Record<string, string>> = Object.fromEntries(
  (readdirSync(ROOT, { recursive: true }) as string[])
    .filter((path) => path.endsWith('.dowel') && !path.includes('broken'))
    .map((path) => [path.replaceAll('\\', '/'), readFileSync(join(ROOT, path), 'utf8')]),
);

export function hostOf(texts: Readonly<Record<string, string>>): SourceHost {
  return {
    read: (path) => texts[path],
    resolve: (from, to) => posix.join(posix.dirname(from), to),
  } as SourceHost;
}

export interface MachineDemo {
  path: string;
  model: Model;
}

export function machinesIn(texts: Readonly<Record<string, string>>): MachineDemo[] {
  return Object.keys(texts).flatMap((path) => {
    const loader = new Loader(hostOf(texts));
    const file = loader.load(path)!;
    return file.machines.map((machine) => ({
      path,
      model: buildModel(machine, file, loader.visible(file)).model,
    }));
  });
}

export interface ProcedureDemo {
  path: string;
  name: string;
  procedure: Procedure;
  model: Model;
  execution: Execution;
}

export function proceduresIn(texts: Readonly<Record<string, string>>): ProcedureDemo[] {
  return Object.keys(texts).flatMap((path) => {
    const loader = new Loader(hostOf(texts));
    const file = loader.load(path)!;
    return file.procedures.map((procedure) => {
      const header = procedure.headers.find((one) => one.header === 'for');
      const ref = header?.header === 'for' ? header.refs[0]! : undefined;
      const found = findMachine(loader.visible(file), ref!.name.text)!;
      const { model } = buildModel(found.machine, found.file, loader.visible(found.file));
      const visible = loader.visible(file);
      const execution = execute(model, procedure, path, visible, {}, new SharedWork(), true);
      return { path, name: procedure.title?.value ?? '', procedure, model, execution };
    });
  });
}

export interface Element {
  '#name': string;
  $?: Record<string, string>;
  $$?: Element[];
  _?: string;
}

/** A drawing as a strict XML parser (xml2js) reads it: well-formed, or the test fails. */
export async function readSvg(svg: string): Promise<Element> {
  const read = await parseStringPromise(svg, {
    strict: true,
    explicitChildren: true,
    preserveChildrenOrder: true,
    explicitRoot: false,
  });
  return read as Element;
}

/** Every element below, in the order of the text. */
export function elementsOf(root: Element): Element[] {
  return [root, ...(root.$$ ?? []).flatMap(elementsOf)];
}
