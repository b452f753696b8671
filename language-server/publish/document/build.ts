/**
 * From the text of a procedure to the document that pages, topics and lists are rendered from. Pure: the host gives the
 * texts; dates of files come with the options. Works on half a file: what is not there is left out.
 */
import { checkProject } from '../../checks/check-project.ts';
import { type Job, jobOf } from '../../lists/job.ts';
import { headerOf, listsOf } from '../../lists/lists.ts';
import { Loader } from '../../model/names.ts';
import type { SourceHost } from '../../project/project.ts';
import { type Finding, SEVERITIES } from '../../report/finding.ts';
import { linesOf } from '../../report/positions.ts';
import { numberWord } from '../../wording/nouns.ts';
import { saidSentence } from '../sentences/texts.ts';
import { cautionsOf } from '../words/cautions.ts';
import { DEFAULT_OPTIONS, type PublishOptions } from '../words/options.ts';
import { capital, type Words, wordsOf } from '../words/words.ts';
import { FlowBuilder } from './flow.ts';
import { linkOf } from './flow-links.ts';
import { appliesTo, machinesOf, purposeOf, statesAt } from './front.ts';
import { differencesOf, hazardsOf, stepsIn, thingInfo, wasteOf } from './rest.ts';
import { type CheckResult, DOCUMENT_VERSION, type ProcedureDocument, plainText } from './types.ts';

export interface BuildOptions extends Partial<PublishOptions> {
  /** Findings that are known already; left out, the file is checked here. `false`: not checked. */
  findings?: readonly Finding[] | false;
}

/** One procedure of a file: the one named, else the first. Undefined where there is none. */
export function buildDocument(
  host: SourceHost,
  path: string,
  procedure?: string,
  options: BuildOptions = {},
): ProcedureDocument | undefined {
  const all = documentsOf(host, path, options, procedure);
  return all[0];
}

/** The procedures of a file, in the order they are written. */
export function documentsOf(
  host: SourceHost,
  path: string,
  options: BuildOptions = {},
  only?: string,
): ProcedureDocument[] {
  const { findings: given, ...own } = options;
  const chosen: PublishOptions = { ...DEFAULT_OPTIONS, ...own };
  const words = wordsOf(chosen.words);
  const loader = new Loader(host);
  const file = loader.load(path);
  if (!file) return [];
  const wanted = file.procedures.filter(({ name }) => only === undefined || name?.text === only);
  if (wanted.length === 0) return [];
  const findings =
    given === false
      ? undefined
      : (given ?? checkProject(host, [path], { convention: chosen.convention }).findings);
  return wanted.map((procedure) => {
    const job = jobOf(loader, file, procedure, {
      say: words.say,
      secondUnits: chosen.secondUnits,
      units: chosen.units,
    });
    return documentOf(job, words, chosen, findings);
  });
}

function documentOf(
  job: Job,
  words: Words,
  options: PublishOptions,
  findings: readonly Finding[] | undefined,
): ProcedureDocument {
  const { procedure, model, file } = job;
  const title = procedure.title?.value ?? capital((procedure.name?.text ?? '').replaceAll('-', ' '));
  const document = headerOf(procedure, 'document');
  const elsewhere = headerOf(procedure, 'elsewhere')?.text?.value;
  const builder = new FlowBuilder(job, words, options);
  const flow = builder.all();
  const steps = stepsIn(flow);
  const lists = listsOf(job);
  const conditions = procedure.headers.flatMap((header) =>
    header.header === 'needs' && header.text
      ? [plainText(saidSentence(header.text, model, job.measures))]
      : [],
  );
  const files = [file.path, ...job.visible.map(({ path }) => path)];
  return {
    version: DOCUMENT_VERSION,
    id: procedure.name?.text ?? '',
    language: words.language,
    title,
    ...(document?.number ? { number: document.number.value } : {}),
    ...(document?.issue === undefined ? {} : { issue: document.issue }),
    ...(document?.date ? { date: document.date.value } : {}),
    changes: procedure.headers.flatMap((header) =>
      header.header === 'change' && header.text
        ? [plainText(saidSentence(header.text, model, job.measures))]
        : [],
    ),
    purpose: purposeOf(title, words),
    machine: { id: model.name, title: model.title },
    machines: machinesOf(job),
    appliesTo: appliesTo(job, words),
    ...(elsewhere === undefined ? {} : { elsewhere }),
    startsWith: statesAt(job, words, 'starts with'),
    endsWith: statesAt(job, words, 'ends with'),
    lists: { ...lists, conditions },
    hazards: hazardsOf(flow, builder.sets, job, words),
    variantDifferences: differencesOf(steps, builder.sets, job),
    flow,
    things: Object.fromEntries(
      model.things
        .filter((thing) => builder.mentioned.has(thing.name) || isListed(thing.name, lists))
        .map((thing) => [thing.name, thingInfo(thing, job)]),
    ),
    records: builder.records,
    leftAtEnd: builder.ledger.entries(job.within),
    tally: builder.ledger.tally(),
    waste: wasteOf(job, words),
    troubles: builder.troubles,
    waivers: builder.waivers,
    pictures: builder.pictures,
    uses: job.uses.map((use) => linkOf(use.procedure, use.file.path, use.procedure.name?.text ?? '')),
    check: checkOf(job, words, findings),
    sources: [...new Set(files)].map((path) => {
      const date = options.dateOf?.(path);
      return { file: path, ...(date === undefined ? {} : { date }) };
    }),
    cautions: cautionsOf(words),
  };
}

function isListed(name: string, lists: ReturnType<typeof listsOf>): boolean {
  return [lists.tools, lists.newParts, lists.kits, lists.fluids, lists.consumables].some((list) =>
    list.some(({ id }) => id === name),
  );
}

/**
 * The findings about this procedure: those in its text, in the procedures it uses, and in what it shares with others
 * (the machine, files that it uses), wherever no other procedure stands.
 */
function checkOf(job: Job, words: Words, all: readonly Finding[] | undefined): CheckResult {
  const none = { errors: 0, warnings: 0, informations: 0, hints: 0, findings: [] };
  if (!all) return { checked: false, ...none, sentence: words.say('check.not') };
  const { procedure, file, visible, uses } = job;
  const seen = new Map([file, ...visible].map((one) => [one.path, one]));
  const mine = new Set([procedure, ...uses.map((use) => use.procedure)]);
  const own = all.filter((one) => {
    const at = seen.get(one.file);
    const around = at?.procedures.find(({ start, end }) => one.start >= start && one.start <= end);
    return at !== undefined && (around === undefined || mine.has(around));
  });
  const sorted = [...own].sort((a, b) => SEVERITIES.indexOf(a.severity) - SEVERITIES.indexOf(b.severity));
  const count = (severity: Finding['severity']) => own.filter((one) => one.severity === severity).length;
  const kinds = SEVERITIES.flatMap((severity) => {
    const number = count(severity);
    return number > 0
      ? [words.say(`check.kind.${severity}`, { count: number, number: numberWord(number) })]
      : [];
  });
  const lines = new Map([...seen].map(([path, { text }]) => [path, linesOf(text)]));
  return {
    checked: true,
    errors: count('error'),
    warnings: count('warning'),
    informations: count('information'),
    hints: count('hint'),
    sentence:
      own.length === 0
        ? words.say('check.none')
        : words.say('check.some', {
            count: own.length,
            number: numberWord(own.length),
            kinds: kinds.join(', '),
          }),
    findings: sorted.map(({ check, severity, message, file: path, start }) => ({
      check,
      severity,
      message,
      file: path,
      line: lines.get(path)!.at(start).line + 1,
    })),
  };
}
