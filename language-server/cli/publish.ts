/**
 * `dowel publish`: reads and checks the procedures of a folder, makes the site of those that check clean, and puts it
 * in its place as one act. What does not check clean is held back and named; with `--allow-findings` it is published
 * with its findings on top.
 */
import { statSync } from 'node:fs';
import { dirname, relative, resolve, sep } from 'node:path';
import { ALL_CHECKS } from '../checks/all.ts';
import { checkProject } from '../checks/check-project.ts';
import type { HouseConfig } from '../config/house.ts';
import { secondUnitsOf } from '../lists/measures.ts';
import { buildModel } from '../model/build.ts';
import { type LoadedFile, Loader } from '../model/names.ts';
import { ditaFiles } from '../publish/dita/dita.ts';
import { documentsOf } from '../publish/document/build.ts';
import type { ProcedureDocument } from '../publish/document/types.ts';
import { orderDrawing } from '../publish/drawings/order.ts';
import { orderPictures } from '../publish/drawings/order-pictures.ts';
import { jsonFiles } from '../publish/json/json.ts';
import { drawn } from '../publish/page/drawn.ts';
import { MARKER } from '../publish/site/addresses.ts';
import { jobDrawings } from '../publish/site/job-drawings.ts';
import { machineSheet } from '../publish/site/machine-facts.ts';
import { machineMapOf } from '../publish/site/machine-map.ts';
import { MARKER_TEXT, type PublishedMachine, type PublishedProcedure, siteOf } from '../publish/site/site.ts';
import { pageWords } from '../publish/words/page-words.ts';
import { inReadingOrder } from '../report/finding.ts';
import { type Disk, disk } from './disk.ts';
import { houseOf } from './house.ts';
import { namesIn } from './names.ts';
import { complain, type ExitCode, print } from './output.ts';
import { pictureFiles } from './picture-files.ts';
import { pictureMissing, picturesMissing } from './picture-missing.ts';
import { filesOf } from './walk.ts';
import { writeSite } from './write-site.ts';

export interface PublishCommandOptions {
  /** The folder of the site. */
  out: string;
  allowFindings?: boolean;
  /** A site of pages; or topics or JSON for other programs, one folder of files. */
  format?: PublishForm;
}

export type PublishForm = 'html' | 'dita' | 'json';

export function publish(
  path: string,
  { out, allowFindings = false, format = 'html' }: PublishCommandOptions,
): ExitCode {
  const house = houseOf(path);
  if (house.refused) return refuse(house.refused.path, house.refused.reason, house.refused.remedy);
  const [problem] = house.problems;
  if (problem) return refuse(problem.file, problem.message, problem.help ?? '');

  const names = namesIn(process.cwd());
  const { files, refused } = filesOf([path], names);
  const texts = disk(names);
  const loader = new Loader(texts);
  const loaded = files.flatMap((file) => loader.load(file) ?? []);
  const [first] = [...refused, ...texts.refused.filter((one) => files.includes(one.path))];
  if (first) return refuse(first.path, first.reason, first.remedy);

  const pictures = pictureFiles();
  const found = gather(path, loaded, { texts, loader, pictures, config: house.config });
  const clean = ({ document }: PublishedProcedure) => document.check.errors + document.check.warnings === 0;
  const published = allowFindings ? found.procedures : found.procedures.filter(clean);
  const held = found.procedures.filter((one) => !published.includes(one));
  for (const { document, file } of held) {
    const { errors, warnings } = document.check;
    const counts = [errors > 0 && counted(errors, 'error'), warnings > 0 && counted(warnings, 'warning')];
    complain(
      `held back: ${document.title} (${file}), with ${counts.filter((one) => one).join(' and ')}. "dowel check ${path}" shows them; mend them, or publish with --allow-findings.`,
    );
  }
  if (published.length === 0 && held.length > 0) return 1;
  if (published.length === 0)
    return refuse(path, 'there is no procedure in it', 'Name a folder with procedures.');

  const documents = published.map(({ document }) => document);
  const made =
    format === 'html'
      ? siteOf({
          language: house.config.words === 'american' ? 'en-US' : 'en-GB',
          procedures: published,
          machines: found.machines,
          checks: [...ALL_CHECKS, pictureMissing],
          pictures,
        }).files
      : marked(format === 'dita' ? ditaFiles(documents) : jsonFiles(documents));
  const written = writeSite(out, made, files);
  if ('reason' in written) {
    complain(`cannot publish to ${out}: ${written.reason}. ${written.remedy}`);
    return 2;
  }
  print(
    `Published to ${out}: ${counted(published.length, 'procedure')}, ${counted(found.machines.length, 'machine')}; ${counted(written.files, 'file')}.`,
  );
  return held.length > 0 ? 1 : 0;
}

/** With the file by which the next run knows that it may replace the folder. */
function marked(files: ReadonlyMap<string, string>): Map<string, string> {
  return new Map([...files, [MARKER, MARKER_TEXT]]);
}

interface Sources {
  texts: Disk;
  loader: Loader;
  pictures: ReturnType<typeof pictureFiles>;
  config: HouseConfig;
}

/** Documents with their drawings, machines with theirs, and what was found in all of them. */
function gather(path: string, loaded: readonly LoadedFile[], { texts, loader, pictures, config }: Sources) {
  const { convention } = config;
  const checked = checkProject(
    texts,
    loader.files.map((file) => file.path),
    { convention },
  );
  const missing = loaded.flatMap((file) => picturesMissing(file, pictures));
  const findings = inReadingOrder([...checked.findings, ...missing]);
  const inFolder = placesIn(path);
  const words = pageWords(config.words === 'american' ? 'en-US' : 'en-GB');

  const procedures = loaded.flatMap((file): PublishedProcedure[] =>
    documentsOf(texts, file.path, {
      words: config.words,
      convention,
      secondUnits: secondUnitsOf(config.secondUnit),
      units: config.units,
      dateOf,
      findings,
    }).map((document) => ({
      document: seenFrom(inFolder, document),
      file: inFolder(file.path),
      drawings: jobDrawings(document, loader, file.path),
    })),
  );
  const machines = loaded.flatMap((file): PublishedMachine[] =>
    file.machines.flatMap((machine) => {
      if (!machine.name) return [];
      const { model } = buildModel(machine, file, loader.visible(file));
      const map = machineMapOf(model, words);
      const orders = orderPictures(model).flatMap((picture, at) => {
        const drawing = orderDrawing(picture, { prefix: `order-${at}` });
        return drawing
          ? [{ title: `${words.order}: ${picture.name}`, drawing: drawn(drawing, words.inWords) }]
          : [];
      });
      return [
        {
          sheet: machineSheet(model, words.kinds),
          file: inFolder(file.path),
          drawings: [...(map ? [{ title: words.map, drawing: map }] : []), ...orders],
        },
      ];
    }),
  );
  return { procedures, machines };
}

/** The document with the files that it names as seen from the published folder. */
function seenFrom(inFolder: (file: string) => string, document: ProcedureDocument): ProcedureDocument {
  const within = <T extends { file: string }>(one: T): T => ({ ...one, file: inFolder(one.file) });
  return {
    ...document,
    sources: document.sources.map(within),
    uses: document.uses.map(within),
    check: { ...document.check, findings: document.check.findings.map(within) },
  };
}

/** A file's place in the published folder, so that no page tells where on this machine it lay. */
function placesIn(path: string): (file: string) => string {
  const start = resolve(path);
  const folder = statSync(start).isDirectory() ? start : dirname(start);
  return (file) => relative(folder, resolve(file)).split(sep).join('/');
}

/** The day on which a file was changed last, as the disk has it: `2026-11-02`. */
function dateOf(file: string): string | undefined {
  try {
    return statSync(file).mtime.toISOString().slice(0, 10);
  } catch {
    return undefined;
  }
}

function refuse(path: string, reason: string, remedy: string): ExitCode {
  complain(`cannot publish ${path}: ${reason}${/[.!?]$/.test(reason) ? '' : '.'} ${remedy}`);
  return 2;
}

function counted(count: number, word: string): string {
  return `${count} ${word}${count === 1 ? '' : 's'}`;
}
