/**
 * The command line: which commands there are, what they take, and the exit code. Each command is loaded
 * only when it is asked for, so that `dowel check` starts fast.
 *
 * Exit codes: 0 nothing to report; 1 findings at or above the asked severity; 2 the work could not be done.
 */
import { Command, CommanderError, InvalidArgumentError, Option } from 'commander';
import { SEVERITIES } from '../report/finding.ts';
import type { CheckOptions } from './check.ts';
import type { CompareOptions } from './compare.ts';
import { CI_SERVICES } from './first-files.ts';
import type { FormatOptions } from './format.ts';
import type { InitOptions } from './init.ts';
import type { ListsOptions } from './lists.ts';
import { complain, type ExitCode } from './output.ts';
import type { PublishCommandOptions, PublishForm } from './publish.ts';
import { FORMS, type OutputFile } from './reports.ts';
import type { StateOptions } from './state.ts';

/** Put in by the build, from package.json. */
declare const VERSION: string;

/** Hidden, so that no walk through folders meets it. */
/** A day. */
const MOST_SECONDS = 86_400;
const DEFAULT_CACHE = '.dowel-cache';

/** Runs the command that the arguments (without program and script) ask for. */
export async function main(args: readonly string[]): Promise<ExitCode> {
  let code: ExitCode = 0;
  const done = (result: ExitCode) => {
    code = result;
  };
  try {
    await program(args[0], done).parseAsync(mendAlone(args), { from: 'user' });
    return code;
  } catch (error) {
    if (error instanceof CommanderError) return error.exitCode === 0 ? 0 : 2;
    complain(`Dowel itself has failed: ${error instanceof Error ? error.stack : String(error)}`);
    return 2;
  }
}

type Done = (code: ExitCode) => void;

/** The command that is asked for, where it is a known one: setting up all of them takes as long as listing a folder. */
function program(asked: string | undefined, done: Done): Command {
  const dowel = new Command('dowel')
    .description('Checks repair procedures against the machine they are about.')
    .version(VERSION)
    .exitOverride()
    .showSuggestionAfterError()
    .configureHelp({ sortSubcommands: false });
  const one = asked !== undefined && Object.hasOwn(COMMANDS, asked) ? COMMANDS[asked] : undefined;
  for (const add of one ? [one] : Object.values(COMMANDS)) add(dowel, done);
  return dowel;
}

/** All commands, in the order of the help. */
const COMMANDS: Readonly<Record<string, (dowel: Command, done: Done) => void>> = {
  check: (dowel, done) => {
    dowel
      .command('check')
      .description('report what is wrong with procedures and machines; writes nothing but with --mend=write')
      .argument('<paths...>', 'files, or folders that are searched for files ending in .dowel')
      .addOption(new Option('--format <form>', 'form of the report').choices(FORMS).default('text'))
      .option(
        '--output <form=file>',
        'write a report to a file too; may be given several times',
        outputFile,
        [] as OutputFile[],
      )
      .option('--most <count>', 'show at most so many findings in the text', count)
      .option('--baseline <file>', 'leave out the findings listed in the file, which were there before')
      .addOption(
        new Option(
          '--baseline-update <how>',
          'bring that list up to date: shrink takes out what is gone, grow takes in what is new too',
        ).choices(['shrink', 'grow']),
      )
      .addOption(
        new Option('--severity <severity>', 'mildest severity that makes the exit code 1')
          .choices(SEVERITIES)
          .default('error'),
      )
      .addOption(
        new Option(
          '--mend [how]',
          'show what would mend the findings, as a patch; --mend=write mends the files',
        ).choices(['show', 'write']),
      )
      .option('--config <file>', 'the configuration to use, wherever the files lie')
      .addOption(
        new Option('--convention <name>', 'what signal words mean; stronger than the configuration').choices([
          'ansi',
          'military',
        ]),
      )
      .option('--show-waived', 'print what waivers hold back, with their reasons')
      .option('--cache [folder]', 'keep results in a folder, and check again only what has changed')
      .option('--workers <count>', 'threads at most; as many as there are cores, where it pays', count)
      .option(
        '--time-limit <seconds>',
        'end the check of a file that takes longer (60), and go on with the others',
        seconds,
      )
      .option(
        '--changed-since <revision>',
        'only files changed since a revision of git, and those that use them',
      )
      .option('--watch', 'go on, and check again whenever a file changes')
      .option('--color', 'colour, even where no terminal is seen')
      .option('--no-color', 'no colour')
      .action(
        async (
          paths: string[],
          given: Omit<CheckOptions, 'cache'> & { cache?: string | true; watch?: boolean },
        ) => {
          const cache = given.cache === true ? DEFAULT_CACHE : given.cache;
          const { watch, ...options } = { ...given, cache };
          if (watch) return done(await (await import('./watch.ts')).watchPaths(paths, options));
          done(await (await import('./check.ts')).check(paths, options));
        },
      );
  },

  worker: (dowel) => {
    dowel.command('worker', { hidden: true }).action(async () => (await import('./worker.ts')).work());
  },

  explain: (dowel, done) => {
    dowel
      .command('explain')
      .description('tell what a check looks at and why, or list all checks')
      .argument('[check]', 'name of a check, as a report prints it')
      .action(async (name: string | undefined) => done((await import('./explain.ts')).explain(name)));
  },

  format: (dowel, done) => {
    dowel
      .command('format')
      .description('lay files out in the one layout there is')
      .argument('<paths...>', 'files or folders')
      .option('--check', 'change nothing; exit code 1 where a file is not laid out', false)
      .action(async (paths: string[], options: FormatOptions) =>
        done((await import('./format.ts')).format(paths, options)),
      );
  },

  state: (dowel, done) => {
    dowel
      .command('state')
      .description('tell how the machine stands just before a line of a procedure')
      .argument('<file>')
      .requiredOption('--at <line>', 'the line, counted from 1', lineNumber)
      .option('--config <file>', 'the configuration to use, wherever the file lies')
      .action(async (file: string, options: StateOptions) =>
        done(await (await import('./state.ts')).state(file, options)),
      );
  },

  'write-out': (dowel, done) => {
    dowel
      .command('write-out')
      .description('print a file with every reverse, do and for each written out; writes no file')
      .argument('<file>')
      .action(async (file: string) => done((await import('./write-out.ts')).writeOutFile(file)));
  },

  compare: (dowel, done) => {
    dowel
      .command('compare')
      .description('tell what is different in meaning between two files, folders or revisions of git')
      .argument('<old>', 'a file, a folder or a revision')
      .argument('<new>')
      .argument('[paths...]', 'of a revision, only these files or folders')
      .addOption(
        new Option('--format <form>', 'form of the report').choices(['text', 'json', 'html']).default('text'),
      )
      .action(async (old: string, now: string, paths: string[], options: CompareOptions) =>
        done(await (await import('./compare.ts')).compare(old, now, paths, options)),
      );
  },

  publish: (dowel, done) => {
    dowel
      .command('publish')
      .description('make a site of the procedures that check clean: pages that work offline and on paper')
      .argument('<path>', 'a folder that is searched for files ending in .dowel, or one file')
      .requiredOption('--out <folder>', 'the folder of the site; it is replaced as a whole')
      .addOption(
        new Option('--format <form>', 'pages, DITA 1.3 topics, or JSON for other programs')
          .choices(['html', 'dita', 'json'] satisfies PublishForm[])
          .default('html'),
      )
      .option('--allow-findings', 'publish what has findings, too, with the findings on top of the page')
      .action(async (path: string, options: PublishCommandOptions) =>
        done((await import('./publish.ts')).publish(path, options)),
      );
  },

  lists: (dowel, done) => {
    dowel
      .command('lists')
      .description('list what each job of a file needs: tools, new parts, fluids, people, time')
      .argument('<file>')
      .addOption(
        new Option('--format <form>', 'form of the lists').choices(['table', 'json', 'csv']).default('table'),
      )
      .action(async (file: string, options: ListsOptions) =>
        done((await import('./lists.ts')).lists(file, options)),
      );
  },

  chart: (dowel, done) => {
    dowel
      .command('chart')
      .description('print what comes off and goes back in a procedure, as an SVG drawing')
      .argument('<file>', 'a file with a procedure')
      .argument('[name]', 'which procedure, where the file has several')
      .action(async (file: string, name: string | undefined) =>
        done((await import('./drawing.ts')).chartOfFile(file, name)),
      );
  },

  map: (dowel, done) => {
    dowel
      .command('map')
      .description('print what sits on, covers and holds what on a machine, as an SVG drawing')
      .argument('<file>', 'a file with a machine')
      .argument('[thing]', 'only this thing and what it has to do with')
      .action(async (file: string, thing: string | undefined) =>
        done((await import('./drawing.ts')).mapOfFile(file, thing)),
      );
  },

  fastener: (dowel, done) => {
    dowel
      .command('fastener')
      .description('work out strength, preload and usual torque of one fastener')
      .argument('<words...>', 'a thread, then in any order class, grade, torque, K, condition, angle, name')
      // A minus sign belongs to a number here.
      .allowUnknownOption()
      .addHelpText(
        'after',
        '\nExample: dowel fastener M10x1.5 class 10.9 torque 45 N·m K 0.15 angle 90° wrench 400 mm adapter 60 mm',
      )
      .action(async (words: string[]) => done((await import('./fastener.ts')).fastener(words)));
  },

  init: (dowel, done) => {
    dowel
      .command('init')
      .description('write a first machine, procedure, configuration and CI example that check clean')
      .argument('[folder]', 'where; nothing is written over', '.')
      .addOption(new Option('--ci <service>', 'the CI example').choices(CI_SERVICES).default('shell'))
      .action(async (folder: string, options: InitOptions) =>
        done((await import('./init.ts')).init(folder, options)),
      );
  },

  demo: (dowel, done) => {
    dowel
      .command('demo')
      .description('check the demo procedures: the right ones are silent, the broken ones are not')
      .action(async () => done(await (await import('./demo.ts')).demo()));
  },
};

/** `--mend` by itself takes no path for its value. */
function mendAlone(args: readonly string[]): string[] {
  const end = args.indexOf('--');
  return args.map((arg, index) => (arg === '--mend' && (end < 0 || index < end) ? '--mend=show' : arg));
}

/** `sarif=report.sarif`: the form and where it goes. */
function outputFile(text: string, before: OutputFile[]): OutputFile[] {
  const at = text.indexOf('=');
  const form = FORMS.find((one) => one === text.slice(0, at));
  if (form === undefined || at === text.length - 1)
    throw new InvalidArgumentError(`Write it as FORM=FILE, where FORM is one of ${FORMS.join(', ')}.`);
  return [...before, { form, path: text.slice(at + 1) }];
}

function count(text: string): number {
  const value = Number(text);
  if (!Number.isInteger(value) || value < 1)
    throw new InvalidArgumentError('It is a whole number from 1 up.');
  return value;
}

function seconds(text: string): number {
  const value = Number(text);
  if (!(value > 0) || value > MOST_SECONDS)
    throw new InvalidArgumentError(`It is a number of seconds above 0, at most ${MOST_SECONDS}.`);
  return value;
}

/** A line number as a person counts it, from 1. */
function lineNumber(text: string): number {
  const line = Number(text);
  if (!Number.isInteger(line) || line < 1) throw new InvalidArgumentError('Lines count from 1.');
  return line;
}
