/** `dowel lists FILE`: what each job of a file needs: tools, new parts, fluids, people, time. Writes no file. */
import { jobsOf } from '../lists/job.ts';
import { listsOf } from '../lists/lists.ts';
import { secondUnitsOf } from '../lists/measures.ts';
import { listsCsv, listsJson, listsTable } from '../publish/lists-text.ts';
import { wordsOf } from '../publish/words/words.ts';
import { disk } from './disk.ts';
import { houseOf } from './house.ts';
import { namesIn } from './names.ts';
import { complain, type ExitCode, print } from './output.ts';
import { SIZE_LIMIT } from './read.ts';

export interface ListsOptions {
  format: 'table' | 'json' | 'csv';
}

export function lists(path: string, options: ListsOptions): ExitCode {
  const names = namesIn(process.cwd());
  const file = names.of(path);
  const texts = disk(names);
  if (texts.read(file) === undefined) {
    const { reason, remedy } = texts.refused[0] ?? {
      reason: `it is larger than ${SIZE_LIMIT / 1024 / 1024} MB`,
      remedy: 'Split it into procedures that use one another.',
    };
    complain(`cannot read ${file}: ${reason}. ${remedy}`);
    return 2;
  }
  const house = houseOf(path);
  const [problem] = house.problems;
  if (house.refused ?? problem) {
    const { refused } = house;
    complain(
      refused
        ? `cannot read ${refused.path}: ${refused.reason}. ${refused.remedy}`
        : `${problem!.file}: ${problem!.message} ${problem!.help ?? ''}`.trim(),
    );
    return 2;
  }
  const { words: spelling, units, secondUnit } = house.config;
  const words = wordsOf(spelling);
  const jobs = jobsOf(texts, file, { say: words.say, units, secondUnits: secondUnitsOf(secondUnit) });
  if (jobs.length === 0) {
    complain(`${file} has no procedure, so there is nothing to list. Name a file that has one.`);
    return 2;
  }
  const all = jobs.map((job) => ({
    id: job.procedure.name?.text ?? '',
    title: job.procedure.title?.value ?? job.procedure.name?.text ?? '',
    lists: listsOf(job),
  }));
  const write = { table: listsTable, json: listsJson, csv: listsCsv }[options.format];
  print(write(all, words).replace(/\n$/, ''));
  return 0;
}
