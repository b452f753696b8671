/**
 * `dowel check`: reads the files, has them checked, prints the report. Writes nothing to the disk; with
 * `--mend=write` that is the work of ./mend.ts.
 */
import { existsSync } from 'node:fs';
import { type FileChecked, together } from '../checks/together.ts';
import type { Waived } from '../checks/waivers.ts';
import { type Finding, inReadingOrder, SEVERITIES, type Severity } from '../report/finding.ts';
import { fingerprintsOf } from '../report/fingerprint.ts';
import { lineStore } from '../report/frame.ts';
import type { Painter } from '../report/text.ts';
import type { BaselineUpdate } from './baseline.ts';
import type { CheckHow } from './check-files.ts';
import { type Disk, disk } from './disk.ts';
import { tooLargeFinding } from './file-too-large.ts';
import { cut, MOST_FINDINGS } from './findings-cut.ts';
import { type HouseOptions, type Houses, housesOf } from './houses.ts';
import { prepareFor } from './long-work.ts';
import type { MendHow } from './mend.ts';
import { type Names, namesIn } from './names.ts';
import { complain, type ExitCode, isTerminal, printRaw } from './output.ts';
import { writeText } from './replace.ts';
import { type Form, type OutputFile, type Reported, reportIn } from './reports.ts';
import { withTimeLimit } from './time-limit.ts';
import { filesOf, type Refused } from './walk.ts';

/** Put in by the build, from package.json. */
declare const VERSION: string;

export interface CheckOptions extends PathOptions {
  /** What standard output gets. */
  format: Form;
  /** Reports that are written to files besides. */
  output?: readonly OutputFile[];
  /** In text, at most so many findings are shown. */
  most?: number;
  /** The file that lists findings known before, which are neither shown nor counted. */
  baseline?: string;
  baselineUpdate?: BaselineUpdate;
  /** The mildest severity that makes the exit code 1. */
  severity: Severity;
  /** Show or write what mends the findings; in JSON they are listed with the findings. */
  mend?: MendHow;
  /** Print what waivers hold back. */
  showWaived?: boolean;
  /** Undefined: colour where a person sees it and has not asked for none. */
  color?: boolean;
}

export interface Checked {
  findings: Finding[];
  /** Findings that waivers hold back. */
  waived: Waived[];
  houses: Houses;
  /** The names of the files that were read and checked. */
  files: string[];
  refused: Refused[];
  disk: Disk;
}

/** From so many files on it pays to look for another core. */
const MANY = 64;

export interface PathOptions extends HouseOptions {
  /** The folder in which results are kept from run to run. */
  cache?: string;
  /** How many threads at most. */
  workers?: number;
  /** Seconds for one file at most. */
  timeLimit?: number;
  /** Only files that have changed since this revision of git, and those that use them. */
  changedSince?: string;
}

function many(files: number, { cache, workers }: PathOptions): boolean {
  return cache !== undefined || (files >= MANY && workers !== 1);
}

/** Only what has changed, where that is asked for; where git cannot tell, nothing, and that is refused. */
async function narrowed(
  files: readonly string[],
  texts: Disk,
  names: Names,
  { changedSince }: PathOptions,
  refused: Refused[],
): Promise<string[]> {
  if (changedSince === undefined) return [...files];
  const touched = (await import('./changed-since.ts')).touchedSince(changedSince, files, texts, names);
  if (!('reason' in touched)) return [...touched];
  refused.push({ path: `what has changed since ${changedSince}`, ...touched });
  return [];
}

async function resourcesFor(
  files: number,
  options: PathOptions,
): Promise<Pick<CheckHow, 'cache' | 'workers' | 'timeLimit' | 'progress'>> {
  if (!many(files, options)) return {};
  const [{ ResultCache }, { progress }] = await Promise.all([import('./cache.ts'), import('./progress.ts')]);
  return {
    ...(options.cache === undefined ? {} : { cache: new ResultCache(options.cache, VERSION) }),
    ...(options.workers === undefined ? {} : { workers: options.workers }),
    ...(options.timeLimit === undefined ? {} : { timeLimit: options.timeLimit }),
    progress: progress(),
  };
}

async function checkedHere(
  texts: Disk,
  files: readonly string[],
  { timeLimit }: PathOptions,
): Promise<FileChecked[]> {
  const { eachChecker } = await import('../checks/check-project.ts');
  prepareFor(files);
  return withTimeLimit(() => eachChecker(texts), timeLimit)(files);
}

/** Checks the files that the paths mean; prints nothing but how far it has come, to a person at a terminal. */
export async function checkPaths(paths: readonly string[], options: PathOptions = {}): Promise<Checked> {
  const names = namesIn(process.cwd());
  const { files, refused } = filesOf(paths, names);
  const texts = disk(names);
  const houses = await housesOf(files, texts, names, options);
  texts.houseOf = houses.of;
  // So far only configurations were read.
  const configs = texts.refused.length;
  const named = new Set(paths.map((path) => names.of(path)));
  const asked = files.filter((file) => named.has(file) || !houses.ignores(file));
  const wanted = await narrowed(asked, texts, names, options, refused);
  const how = { houses, options, ...(await resourcesFor(wanted.length, options)) };
  const each = many(wanted.length, options)
    ? await (await import('./check-files.ts')).checkFiles(texts, wanted, how)
    : await checkedHere(texts, wanted, options);
  const unsaved = how.cache?.save();
  if (unsaved) complain(`cannot keep results in ${options.cache}: ${unsaved.reason}. ${unsaved.remedy}`);
  const got = new Set(each.map(({ path }) => path));
  const readable = wanted.filter((file) => got.has(file));
  // Whoever read it, the reason is told here.
  for (const file of wanted) if (!got.has(file)) texts.read(file);
  // What a file uses and cannot have is a finding where it is used, not a file that was named in vain.
  const mine = new Set([...wanted, ...texts.refused.slice(0, configs).map(({ path }) => path)]);
  // In the order of the files, whichever thread met them first.
  const place = new Map(wanted.map((file, at) => [file, at]));
  const at = ({ path }: Refused) => place.get(path) ?? -1;
  refused.push(...texts.refused.filter(({ path }) => mine.has(path)).sort((a, b) => at(a) - at(b)));
  const tooLarge = [...texts.tooLarge]
    .filter(([file]) => mine.has(file))
    .map(([file, size]) => tooLargeFinding(file, size));
  const result = each.some(({ rules }) => rules.length > 0)
    ? (await import('../checks/check-project.ts')).allTogether(texts, readable, each)
    : together(each);
  return {
    findings: inReadingOrder([...result.findings, ...tooLarge, ...houses.problems]),
    waived: result.waived,
    houses,
    files: readable,
    refused,
    disk: texts,
  };
}

export async function check(paths: readonly string[], options: CheckOptions): Promise<ExitCode> {
  const { output = [], severity } = options;
  if (options.mend === 'write' && (options.format !== 'text' || output.length > 0)) {
    complain(
      '--mend=write tells only what it mends, not in JSON or to a file. Leave out --format and --output, or ask for --mend only.',
    );
    return 2;
  }
  if (options.mend && options.format === 'text' && output.length === 0)
    return (await import('./mend.ts')).mend(paths, options.mend, severity, options);
  if (options.baselineUpdate && options.baseline === undefined) {
    complain('--baseline-update needs to know the file: add --baseline FILE.');
    return 2;
  }
  const checked = await checkPaths(paths, options);
  const lines = lineStore((file) => checked.disk.read(file));
  const all = options.mend ? await withMends(checked) : checked.findings;
  const asked = options.baseline !== undefined || options.format !== 'text' || output.length > 0;
  const marks = asked ? fingerprintsOf(all, lines) : [];
  const known = await knownBefore(all, marks, options);
  if (known === undefined) return 2;
  const kept = all.flatMap((finding, at) => (known.has(marks[at]!) ? [] : [{ finding, mark: marks[at]! }]));
  const findings = kept.map(({ finding }) => finding);
  const listed = kept.length > MOST_FINDINGS ? cut(kept, (said) => fingerprintsOf([said], lines)[0]!) : kept;
  const report: Reported = {
    findings: listed.map(({ finding }) => finding),
    fingerprints: listed.map(({ mark }) => mark),
    files: checked.files,
    refused: checked.refused,
    severity,
    known: all.length - findings.length,
    waived: checked.waived,
    showWaived: options.showWaived ?? false,
    limits: (file) => checked.houses.configOf(file).limits,
    lines,
  };
  const paint = options.format === 'text' ? await painter(options.color) : undefined;
  printRaw(await reportIn(options.format, report, { paint, most: options.most }));
  let failed = checked.refused.length > 0;
  for (const { form, path } of output) {
    const failure = writeText(path, await reportIn(form, report));
    if (!failure) continue;
    complain(`cannot write ${path}: ${failure.reason}. ${failure.remedy}`);
    failed = true;
  }
  for (const { path, reason, remedy } of checked.refused)
    complain(`cannot check ${path}: ${reason}. ${remedy}`);
  if (failed) return 2;
  const limit = SEVERITIES.indexOf(severity);
  return findings.some((finding) => SEVERITIES.indexOf(finding.severity) <= limit) ? 1 : 0;
}

/** Fingerprints of the findings that were there before, brought up to date; undefined where that failed and was told. */
async function knownBefore(
  all: readonly Finding[],
  marks: readonly string[],
  { baseline, baselineUpdate: how }: CheckOptions,
): Promise<ReadonlySet<string> | undefined> {
  if (baseline === undefined) return new Set();
  const { readBaseline, updated, writeBaseline } = await import('./baseline.ts');
  const read = how === 'grow' && !existsSync(baseline) ? { known: [] } : readBaseline(baseline);
  let { known } = 'known' in read ? read : { known: undefined };
  let failure = 'known' in read ? undefined : read;
  if (known && how) {
    const found = all.map((finding, at) => ({ finding, fingerprint: marks[at]! }));
    known = updated(known, found, how);
    failure = writeBaseline(baseline, known);
  }
  if (failure) complain(`cannot use the known findings in ${baseline}: ${failure.reason}. ${failure.remedy}`);
  return failure ? undefined : new Set(known!.map(({ fingerprint }) => fingerprint));
}

async function withMends({ findings, disk: texts }: Checked): Promise<Finding[]> {
  const { mendsFor } = await import('../features/mend.ts');
  return findings.map((finding) => {
    const mends = mendsFor(texts, finding.file, finding);
    return mends.length > 0 ? { ...finding, mends } : finding;
  });
}

/** The painter to use, or undefined for plain text. NO_COLOR as in the convention of that name. */
export async function painter(wanted: boolean | undefined): Promise<Painter | undefined> {
  const unasked = () => !process.env.NO_COLOR && process.env.TERM !== 'dumb' && isTerminal();
  if (!(wanted ?? unasked())) return undefined;
  return (await import('../report/colour.ts')).inColour;
}
