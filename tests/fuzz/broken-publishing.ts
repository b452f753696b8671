/**
 * What must hold when any text is published, findings or not: nothing throws, topics are well-formed XML, JSON follows
 * its schema, and no markup of the author comes through. Judges: sax (strict), ajv, html-validate.
 */
import { readFileSync } from 'node:fs';
import { Ajv2020 } from 'ajv/dist/2020.js';
import { Parser } from 'xml2js';
import { buildModel } from '../../language-server/model/build.ts';
import { Loader } from '../../language-server/model/names.ts';
import { memoryHost } from '../../language-server/project/project.ts';
import { ditaFiles } from '../../language-server/publish/dita/dita.ts';
import { documentsOf } from '../../language-server/publish/document/build.ts';
import { orderDrawing } from '../../language-server/publish/drawings/order.ts';
import { orderPictures } from '../../language-server/publish/drawings/order-pictures.ts';
import { jsonFiles } from '../../language-server/publish/json/json.ts';
import { drawn } from '../../language-server/publish/page/drawn.ts';
import { jobDrawings } from '../../language-server/publish/site/job-drawings.ts';
import { machineSheet } from '../../language-server/publish/site/machine-facts.ts';
import { machineMapOf } from '../../language-server/publish/site/machine-map.ts';
import { siteOf } from '../../language-server/publish/site/site.ts';
import { pageWords } from '../../language-server/publish/words/page-words.ts';
import { MARKUP } from './markup.ts';

const PATH = 'a.dowel';
const SCHEMA = new URL('../../language-server/publish/json/procedure.schema.json', import.meta.url);
const followsSchema = new Ajv2020({ strict: false }).compile(
  JSON.parse(readFileSync(SCHEMA, 'utf8')) as object,
);

export interface Published {
  /** What is wrong, in words. */
  wrong?: string;
  /** HTML pages, for judges that take longer. */
  pages: string[];
}

export async function publishing(text: string): Promise<Published> {
  try {
    return await published(text);
  } catch (error) {
    return { pages: [], wrong: `threw ${error instanceof Error ? error.stack : String(error)}` };
  }
}

async function published(text: string): Promise<Published> {
  const host = memoryHost({ [PATH]: text });
  const loader = new Loader(host);
  const file = loader.load(PATH)!;
  const documents = documentsOf(host, PATH);
  const words = pageWords('en-GB');
  const site = siteOf({
    language: 'en-GB',
    procedures: documents.map((document) => ({
      document,
      file: PATH,
      drawings: jobDrawings(document, loader, PATH),
    })),
    machines: file.machines.flatMap((machine) => {
      if (!machine.name) return [];
      const { model } = buildModel(machine, file, loader.visible(file));
      const map = machineMapOf(model, words);
      const orders = orderPictures(model).flatMap((picture, at) => {
        const drawing = orderDrawing(picture, { prefix: `order-${at}` });
        return drawing ? [{ title: picture.name, drawing: drawn(drawing, words.inWords) }] : [];
      });
      const drawings = [...(map ? [{ title: words.map, drawing: map }] : []), ...orders];
      return [{ sheet: machineSheet(model, words.kinds), file: PATH, drawings }];
    }),
    checks: [],
    pictures: () => ({ refused: 'cannot be read' }),
  });
  const pages = [...site.files].filter(([path]) => path.endsWith('.html')).map(([, page]) => page);
  const through = pages.filter((page) => page.includes(MARKUP));
  if (through.length > 0) return { pages, wrong: `markup comes through:\n${through[0]}` };
  for (const [path, topic] of ditaFiles(documents)) {
    try {
      await new Parser({ strict: true }).parseStringPromise(topic);
    } catch (error) {
      return { pages, wrong: `${path}: ${String(error)}\n${topic}` };
    }
  }
  for (const [path, json] of jsonFiles(documents))
    if (path !== 'procedure.schema.json' && !followsSchema(JSON.parse(json)))
      return { pages, wrong: `${path}: ${JSON.stringify(followsSchema.errors)}` };
  return { pages };
}
