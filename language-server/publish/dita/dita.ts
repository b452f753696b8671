/**
 * Procedures as DITA 1.3: a map, a machinery task with what the job needs, and a machinery task for each task of the
 * job. Content models: OASIS DITA 1.3, machinery task; names inside the lists of prelreqs and the public identifiers
 * are from memory.
 */
import type { ProcedureDocument, Rich, Task } from '../document/types.ts';
import { plainText } from '../document/types.ts';
import { freePath } from '../json/json.ts';
import { stepsOf } from './steps.ts';
import { el, fileOf, idOf, type Xml } from './xml.ts';

const TASK = ['-//OASIS//DTD DITA 1.3 Machinery Task//EN', 'machineryTask.dtd'] as const;
const MAP = ['-//OASIS//DTD DITA 1.3 Map//EN', 'map.dtd'] as const;

/** Path to text: `brake-discs.ditamap`, `brake-discs.dita` and one topic for each task. */
export function ditaFiles(documents: readonly ProcedureDocument[]): Map<string, string> {
  const files = new Map<string, string>();
  for (const document of documents) {
    const map = freePath(files, document.id, '.ditamap');
    files.set(map, '');
    const stem = map.slice(0, -'.ditamap'.length);
    const first = freePath(files, stem, '.dita');
    const tasks = document.flow.filter((item) => item.kind === 'task');
    files.set(first, fileOf(firstTopic(document), ...TASK));
    const topics = tasks.map((task) => {
      const path = freePath(files, `${stem}-${idOf(task.id)}`, '.dita');
      files.set(path, fileOf(taskTopic(document, task), ...TASK));
      return path;
    });
    files.set(map, fileOf(mapOf(document, first, topics), ...MAP));
  }
  return files;
}

function mapOf(document: ProcedureDocument, first: string, topics: readonly string[]): Xml {
  const ref = (href: string, ...children: Xml[]) => el('topicref', { href, type: 'task' }, ...children);
  return el(
    'map',
    { 'xml:lang': document.language },
    el('title', {}, document.title),
    ref(first, ...topics.map((path) => ref(path))),
  );
}

/** What the job needs, and the steps that stand in no task. */
function firstTopic(document: ProcedureDocument): Xml {
  const steps = stepsOf(document.flow.filter((item) => item.kind !== 'task'));
  return el(
    'task',
    { id: idOf(document.id), 'xml:lang': document.language },
    el('title', {}, document.title),
    el('shortdesc', {}, document.purpose),
    prologOf(document),
    el(
      'taskbody',
      {},
      prelreqs(document),
      el(
        'context',
        {},
        ...[document.appliesTo.sentence, ...document.appliesTo.serialNumbers].map((text) =>
          el('p', {}, text),
        ),
      ),
      el(
        'section',
        {},
        el('title', {}, 'Before you rely on this text'),
        ...document.cautions.map((text) => el('p', {}, text)),
        el('p', {}, document.check.sentence),
      ),
      steps.length > 0 ? el('steps', {}, ...steps) : undefined,
      el('closereqs', {}, conditionsOf(document.endsWith.map(plainText))),
    ),
  );
}

function taskTopic(document: ProcedureDocument, task: Task): Xml {
  const steps = stepsOf(task.items);
  return el(
    'task',
    { id: idOf(task.id), 'xml:lang': document.language },
    el('title', {}, task.title),
    task.when ? el('shortdesc', {}, `Do this task ${task.when.sentence}.`) : undefined,
    el('taskbody', {}, steps.length > 0 ? el('steps', {}, ...steps) : undefined),
  );
}

/** Number, issue and date, where the job has them. */
function prologOf({ number, issue, date }: ProcedureDocument): Xml | undefined {
  const metadata = [
    ...(number === undefined ? [] : [el('othermeta', { name: 'number', content: number })]),
    ...(issue === undefined ? [] : [el('othermeta', { name: 'issue', content: issue })]),
  ];
  if (metadata.length === 0 && date === undefined) return undefined;
  return el(
    'prolog',
    {},
    date === undefined ? undefined : el('critdates', {}, el('created', { date })),
    metadata.length === 0 ? undefined : el('metadata', {}, ...metadata),
  );
}

/** Every list is said, also where it is empty. */
function prelreqs(document: ProcedureDocument): Xml {
  const { lists } = document;
  const { people, skill, times } = lists;
  const equipment = [...lists.tools, ...lists.protection].map((one) => entry(one));
  const supplies = [
    ...lists.fluids.map((one) => entry(one, (one.amount ?? one.issued)?.text)),
    ...lists.consumables.map((one) => entry(one)),
  ];
  const spares = [
    ...lists.kits.map((one) => entry(one, one.count > 1 ? String(one.count) : undefined)),
    ...lists.newParts.map((one) => entry(one, one.count === undefined ? undefined : String(one.count))),
  ];
  const dangers = document.hazards.map(({ word, text }) => `${word}: ${plainText(text)}`);
  return el(
    'prelreqs',
    {},
    conditionsOf([...lists.conditions, ...document.startsWith.map((one: Rich) => plainText(one))]),
    people === undefined && skill === undefined && times.stated === undefined
      ? undefined
      : el(
          'reqpers',
          {},
          el('personnel', {}, String(people ?? lists.peopleAtOnce)),
          skill === undefined ? undefined : el('perskill', {}, skill),
          times.stated === undefined ? undefined : el('esttime', {}, times.stated.text),
        ),
    el('supequip', {}, listOr('nosupeq', 'supeqli', 'supequi', equipment)),
    el('supplies', {}, listOr('nosupply', 'supplyli', 'supply', supplies)),
    el('spares', {}, listOr('nospares', 'sparesli', 'spare', spares)),
    el(
      'safety',
      {},
      ...(dangers.length > 0 ? dangers.map((text) => el('safecond', {}, text)) : [el('nosafety')]),
    ),
  );
}

function conditionsOf(conditions: readonly string[]): Xml {
  return el(
    'reqconds',
    {},
    ...(conditions.length > 0 ? conditions.map((text) => el('reqcond', {}, text)) : [el('noconds')]),
  );
}

function listOr(none: string, list: string, item: string, texts: readonly string[]): Xml {
  return texts.length === 0 ? el(none) : el(list, {}, ...texts.map((text) => el(item, {}, text)));
}

function entry(
  one: { name: string; when?: { sentence: string }; partNumber?: string },
  amount?: string,
): string {
  const more = [amount, one.partNumber, one.when?.sentence].filter((each) => typeof each === 'string');
  return more.length > 0 ? `${one.name} (${more.join(', ')})` : one.name;
}
