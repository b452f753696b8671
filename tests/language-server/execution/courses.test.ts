/**
 * Small jobs by topic, each with what the executor finds in it: names, places, what stands in the way, what earlier steps
 * did, in which cases. What is right is said by grammar/STATE.md; the records were read against it.
 */
import { describe, expect, test } from 'vitest';
import { COURSE_FILES, carriedOut, coursesIn } from './course-files.ts';
import { machineOf } from './courses.ts';

describe.each(COURSE_FILES)('%s', (file) => {
  const { machine, used, courses } = coursesIn(file);
  const made = machineOf(machine);

  test.each(courses.map((course) => [course.name, course] as const))('%s', (_, course) => {
    expect(carriedOut(made, course, used)).toEqual(course.lines);
  });
});
