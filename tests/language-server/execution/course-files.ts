/**
 * Files in courses/: a machine, a line `---`, then jobs, each in one line (headers before `|`, steps parted by `; `), and
 * behind it, indented, what the executor finds.
 */
import { readdirSync, readFileSync } from 'node:fs';
import { found, jobText, machineOf } from './courses.ts';

export const FOLDER = new URL('courses/', import.meta.url);
export const COURSE_FILES = readdirSync(FOLDER).sort();

export interface Course {
  name: string;
  lines: string[];
}

export function coursesIn(file: string): { machine: string; courses: Course[] } {
  const [machine, jobs] = readFileSync(new URL(file, FOLDER), 'utf8').split('\n---\n') as [string, string];
  const courses: Course[] = [];
  for (const line of jobs.split('\n')) {
    if (line.startsWith('  ')) courses.at(-1)!.lines.push(line.slice(2));
    else if (line !== '') courses.push({ name: line, lines: [] });
  }
  return { machine, courses };
}

/** Other procedures of the file stand before the machine's closing line: `machine … }` then `procedure … }`. */
export function carriedOut(machine: ReturnType<typeof machineOf>, { name }: Course): string[] {
  const [steps, headers] = name.split(' | ').reverse() as [string, string | undefined];
  return found(machine, jobText(steps.split('; '), headers));
}

export function written(file: string): string {
  const { machine, courses } = coursesIn(file);
  const made = machineOf(machine);
  const blocks = courses.map((course) =>
    [course.name, ...carriedOut(made, course).map((line) => `  ${line}`)].join('\n'),
  );
  return `${machine}\n---\n${blocks.join('\n')}\n`;
}
