/**
 * What a reader will get, for panels of the editor: `dowel/preview` (the page of the procedure at a place),
 * `dowel/chart` (what comes off and goes back) and `dowel/map` (how the machine hangs together). Params
 * `{ uri, position }`; null where no procedure or machine is there, or where a chart would tell nothing.
 */
import { readFileSync, realpathSync } from 'node:fs';
import { dirname, join, sep } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Position } from 'vscode-languageserver/node';
import { Loader } from '../../model/names.ts';
import { pathFault, plainPath } from '../../model/picture-paths.ts';
import { buildDocument } from '../../publish/document/build.ts';
import type { ProcedureDocument } from '../../publish/document/types.ts';
import { machineMap } from '../../publish/drawings/map.ts';
import { mapGraph } from '../../publish/drawings/map-graph.ts';
import type { Drawing } from '../../publish/drawings/svg.ts';
import { procedurePage } from '../../publish/page/page.ts';
import type { PictureSource } from '../../publish/page/pictures.ts';
import { chartDrawing, jobDrawings, stepsOf } from '../../publish/site/job-drawings.ts';
import { type Handler, offsetOf, type Services } from './handler.ts';

export interface Preview {
  /** The whole page; it loads nothing from elsewhere. */
  html: string;
  title: string;
  procedure: string;
}

interface Asked {
  uri: string;
  position: Position;
}

const NO_LINKS = {
  procedure: () => undefined,
  machine: () => undefined,
  check: () => undefined,
};

export const published: Handler = {
  capabilities: {},
  register(services) {
    const { connection, host, view } = services;
    connection.onRequest('dowel/preview', ({ uri, position }: Asked): Preview | null => {
      const doc = documentAt(services, uri, position);
      if (!doc) return null;
      const page = procedurePage(doc, {
        pictures,
        links: NO_LINKS,
        drawings: jobDrawings(doc, new Loader(host), uri),
      });
      return { html: page.text, title: doc.title, procedure: doc.id };
    });
    connection.onRequest('dowel/chart', ({ uri, position }: Asked): Drawing | null => {
      const doc = documentAt(services, uri, position);
      return (doc && chartDrawing(doc, stepsOf(doc.flow), new Loader(host), uri)) ?? null;
    });
    connection.onRequest('dowel/map', ({ uri, position }: Asked): Drawing | null => {
      const scene = view().sceneAt(uri, offsetOf(services, uri, position));
      const model = scene?.model ?? firstMachine(services, uri);
      if (!model) return null;
      return machineMap(mapGraph(model), { prefix: 'map', name: model.title || model.name });
    });
  },
};

function firstMachine({ view }: Services, uri: string) {
  const file = view().file(uri);
  const machine = file?.machines[0];
  return file && machine ? view().model(machine, file) : undefined;
}

/** The procedure at a place, else the first of the file. */
function documentAt(services: Services, uri: string, position: Position): ProcedureDocument | undefined {
  const { host, view, findings } = services;
  const offset = offsetOf(services, uri, position);
  const file = view().file(uri);
  const around = file?.procedures.find(({ start, end }) => start <= offset && offset <= end);
  return buildDocument(host, uri, (around ?? file?.procedures[0])?.name?.text, { findings: findings(uri) });
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
