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

export interface CourseFile {
  machine: string;
  /** Procedures that the jobs use; between two lines `---`. */
  used: string;
  courses: Course[];
}

export function coursesIn(file: string): CourseFile {
  const parts = readFileSync(new URL(file, FOLDER), 'utf8').split('\n---\n');
  const courses: Course[] = [];
  for (const line of parts.at(-1)!.split('\n')) {
    if (line.startsWith('  ')) courses.at(-1)!.lines.push(line.slice(2));
    else if (line !== '') courses.push({ name: line, lines: [] });
  }
  return { machine: parts[0]!, used: parts.length > 2 ? `${parts[1]}\n` : '', courses };
}

export function carriedOut(machine: ReturnType<typeof machineOf>, { name }: Course, used: string): string[] {
  const [steps, headers] = name.split(' | ').reverse() as [string, string | undefined];
  return found(machine, jobText(steps.split('; '), headers), used);
}

export function written(file: string): string {
  const { machine, used, courses } = coursesIn(file);
  const made = machineOf(machine);
  const blocks = courses.map((course) =>
    [course.name, ...carriedOut(made, course, used).map((line) => `  ${line}`)].join('\n'),
  );
  return [machine, ...(used === '' ? [] : [used.trimEnd()]), `${blocks.join('\n')}\n`].join('\n---\n');
}
