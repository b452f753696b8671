/** `dowel chart` and `dowel map`: one drawing as SVG on standard output. */
import { buildModel } from '../model/build.ts';
import { type LoadedFile, Loader } from '../model/names.ts';
import { documentsOf } from '../publish/document/build.ts';
import { machineMap } from '../publish/drawings/map.ts';
import { around, mapGraph } from '../publish/drawings/map-graph.ts';
import { chartDrawing, stepsOf } from '../publish/site/job-drawings.ts';
import { disk } from './disk.ts';
import { namesIn } from './names.ts';
import { complain, type ExitCode, print } from './output.ts';
import { SIZE_LIMIT } from './read.ts';

/** A drawing that stands alone says what it is not. */
const FOOT =
  'Drawn from the text, without its warnings: read the procedure first. Local codes and licensed practice come before it.';

export function chartOfFile(path: string, name?: string): ExitCode {
  const read = load(path);
  if (!read) return 2;
  const { texts, loader, file } = read;
  const [document] = documentsOf(texts, file.path, { findings: false }, name);
  if (!document) {
    const names = file.procedures.flatMap((one) => one.name?.text ?? []);
    const there = names.length > 0 ? `Its procedures: ${names.join(', ')}.` : 'Name a file with a procedure.';
    complain(`${file.path} has no procedure${name === undefined ? '' : ` named ${name}`}. ${there}`);
    return 2;
  }
  const drawing = chartDrawing(document, stepsOf(document.flow), loader, file.path, FOOT);
  if (!drawing) {
    complain(`there is nothing to draw in ${document.id}: hardly anything comes off in it.`);
    return 1;
  }
  print(drawing.svg);
  return 0;
}

export function mapOfFile(path: string, thing?: string): ExitCode {
  const read = load(path);
  if (!read) return 2;
  const { loader, file } = read;
  const [machine] = file.machines;
  if (!machine) {
    complain(`${file.path} has no machine. Name the file that describes it.`);
    return 2;
  }
  const { model } = buildModel(machine, file, loader.visible(file));
  const whole = mapGraph(model);
  const graph = thing === undefined ? whole : around(whole, thing);
  if (graph.nodes.length === 0) {
    complain(
      thing === undefined
        ? `there is nothing to draw in ${file.path}: no thing sits on, covers or holds another.`
        : `${file.path} has no thing named ${thing} that sits on, covers or holds another. Use its name, with hyphens.`,
    );
    return thing === undefined ? 1 : 2;
  }
  print(
    machineMap(graph, {
      prefix: 'map',
      name: model.title,
      foot: FOOT,
      ...(thing === undefined ? {} : { marked: [thing] }),
    }).svg,
  );
  return 0;
}

function load(
  path: string,
): { texts: ReturnType<typeof disk>; loader: Loader; file: LoadedFile } | undefined {
  const names = namesIn(process.cwd());
  const texts = disk(names);
  const loader = new Loader(texts);
  const file = loader.load(names.of(path));
  if (file) return { texts, loader, file };
  const { reason, remedy } = texts.refused[0] ?? {
    reason: `it is larger than ${SIZE_LIMIT / 1024 / 1024} MB`,
    remedy: 'Split it into files that use one another.',
  };
  complain(`cannot read ${names.of(path)}: ${reason}. ${remedy}`);
  return undefined;
}
