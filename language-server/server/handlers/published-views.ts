/**
 * What the panels of the editor show: page, chart and map. Loaded when the first of them is asked for, with all of the
 * publisher; see ./published.ts.
 */
import { readFileSync, realpathSync } from 'node:fs';
import { dirname, join, sep } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Position } from 'vscode-languageserver/node';
import { plain } from '../../features/view.ts';
import { Loader } from '../../model/names.ts';
import { pathFault, plainPath } from '../../model/picture-paths.ts';
import { buildDocument } from '../../publish/document/build.ts';
import type { ProcedureDocument, Step } from '../../publish/document/types.ts';
import { machineMap } from '../../publish/drawings/map.ts';
import { mapGraph } from '../../publish/drawings/map-graph.ts';
import type { Drawing } from '../../publish/drawings/svg.ts';
import { anchor } from '../../publish/page/context.ts';
import { drawn } from '../../publish/page/drawn.ts';
import { procedurePage } from '../../publish/page/page.ts';
import type { PictureSource } from '../../publish/page/pictures.ts';
import { chartDrawing, jobDrawings, stepsOf } from '../../publish/site/job-drawings.ts';
import { pageWords } from '../../publish/words/page-words.ts';
import { offsetOf, type Services } from './handler.ts';
import type { Asked, Preview, ShownDrawing } from './published.ts';
import type { ShownPlace } from './shown.ts';

const NO_LINKS = {
  procedure: () => undefined,
  machine: () => undefined,
  check: () => undefined,
};

/** The page of the procedure at a place. */
export function preview(services: Services, { uri, position }: Asked): Preview | null {
  const doc = documentAt(services, uri, position);
  if (!doc) return null;
  const page = procedurePage(withFileNames(doc), {
    pictures,
    links: NO_LINKS,
    drawings: jobDrawings(doc, new Loader(services.host), uri),
  });
  const places = placesOf(services, doc, ({ id }) => ({ by: 'id', key: anchor(id) }));
  return { html: page.text, title: doc.title, procedure: doc.id, places };
}

/** What comes off and goes back. */
export function chart(services: Services, { uri, position }: Asked): ShownDrawing | null {
  const doc = documentAt(services, uri, position);
  const drawing = doc && chartDrawing(doc, stepsOf(doc.flow), new Loader(services.host), uri);
  if (!drawing) return null;
  return shown(
    drawing,
    doc.title,
    placesOf(services, doc, ({ id }) => ({ by: 'step', key: id })),
  );
}

/** How the machine hangs together. */
export function map(services: Services, { uri, position }: Asked): ShownDrawing | null {
  const scene = services.view().sceneAt(uri, offsetOf(services, uri, position));
  const model = scene?.model ?? firstMachine(services, uri);
  if (!model) return null;
  const graph = mapGraph(model);
  const places = graph.nodes.flatMap(({ name }): ShownPlace[] => {
    const place = model.byName.get(name)?.place;
    return place ? [{ by: 'thing', key: name, ...services.lines.location(place.file, place) }] : [];
  });
  const name = model.title || model.name;
  return shown(machineMap(graph, { prefix: 'map', name }), name, places);
}

/** `title`: what is drawn; what kind of drawing it is, the panel says by itself. */
function shown(drawing: Drawing, title: string, places: ShownPlace[]): ShownDrawing {
  return { ...drawing, title, html: drawn(drawing, pageWords('en-GB').inWords).text, places };
}

/** The machine of the first procedure of a file, else the first machine. */
function firstMachine({ view }: Services, uri: string) {
  const file = view().file(uri);
  const [machine] = file?.machines ?? [];
  const [procedure] = file?.procedures ?? [];
  if (file && procedure) return view().machineOf(procedure, file)?.model;
  return file && machine ? view().model(machine, file) : undefined;
}

/** The procedure at a place; outside all of them the last one before it, else the first of the file. */
function documentAt(services: Services, uri: string, position: Position): ProcedureDocument | undefined {
  const { host, view, findings } = services;
  const offset = offsetOf(services, uri, position);
  const procedures = view().file(uri)?.procedures ?? [];
  const around = procedures.filter(({ start }) => start <= offset).at(-1) ?? procedures[0];
  return buildDocument(host, uri, around?.name?.text, { findings: findings(uri) });
}

/** Files as the reader knows them, not as addresses of this machine. */
function withFileNames(document: ProcedureDocument): ProcedureDocument {
  const named = <T extends { file: string }>(one: T): T => ({
    ...one,
    file: plain(one.file.split('/').at(-1) ?? one.file),
  });
  return {
    ...document,
    sources: document.sources.map(named),
    check: { ...document.check, findings: document.check.findings.map(named) },
  };
}

/** The beginning of the line that each step is written in. */
function placesOf(
  { lines }: Services,
  { flow }: ProcedureDocument,
  elementOf: (step: Step) => Pick<ShownPlace, 'by' | 'key'>,
): ShownPlace[] {
  return stepsOf(flow).map((step) => {
    const { file, line } = step.source;
    const start = lines.of(file).offset({ line: line - 1, column: 0 });
    return { ...elementOf(step), ...lines.location(file, { start, end: start }) };
  });
}

/** A plain file inside the folder of the file that names it, also after every symbolic link is followed. */
const pictures: PictureSource = (from, path) => {
  const fault = pathFault(path);
  if (fault !== undefined) return { refused: fault };
  try {
    const folder = realpathSync(dirname(fileURLToPath(from)));
    const file = realpathSync(join(folder, plainPath(path)));
    if (!file.startsWith(folder + sep)) return { refused: 'leads out of the folder of this file' };
    return { bytes: readFileSync(file) };
  } catch {
    return { refused: 'cannot be read' };
  }
};
